import { html, type TemplateResult } from 'lit';

/**
 * A formula as text with what follows a comma inside a symbol set below the line: "O2,air" with "air" as its index. Commas
 * between arguments have a space behind them. The comma stays in the text for whoever copies or searches it.
 */
export function formulaText(formula: string): (TemplateResult | string)[] {
  return formula.split(/([\p{L}\p{N}/]+,[\p{L}\p{N}.,→]*[\p{L}\p{N}])/u).map((part, i) => {
    if (i % 2 === 0) return part;
    const at = part.indexOf(',');
    return html`<span class="symbol">${part.slice(0, at)}<span class="comma">,</span><sub>${part.slice(at + 1)}</sub></span>`;
  });
}
