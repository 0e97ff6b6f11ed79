import { html, type TemplateResult } from 'lit';
import { symbolParts } from '../../shared/working/symbol-parts.ts';

/** A formula with its indices below the line. Their commas stay in the text for whoever copies or searches it. */
export function formulaText(formula: string): (TemplateResult | string)[] {
  return symbolParts(formula).map((part) =>
    typeof part === 'string'
      ? part
      : html`<span class="symbol">${part.symbol}<span class="comma">,</span><sub>${part.index}</sub></span>`,
  );
}
