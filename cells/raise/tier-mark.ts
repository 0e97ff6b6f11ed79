import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/**
 * A sign for each tier, told apart by shape before colour; the tier's name always stands beside it.
 * Safety: an eight-sided plate. Open: a pipe end without its cap. Supply: a gauge. Tolerance: a line leaving its band.
 * Cost: a flame. Data: an empty field.
 */
const SHAPES: Readonly<Record<string, SVGTemplateResult>> = {
  safety: svg`<path class="danger" d="M14 3H30L41 14V30L30 41H14L3 30V14Z" /><path class="line" d="M22 10V26M22 31.500V35" />`,
  open: svg`<path class="warning" d="M3 14H26V30H3Z" /><path class="stroke" d="M26 9V35M33 12V32M38 12V32" />`,
  supply: svg`<circle class="gas" cx="22" cy="22" r="18" /><path class="stroke" d="M22 22L33 12M10 30A15 15 0 0 1 34 30" />`,
  tolerance: svg`<path class="band" d="M2 18H42V34H2Z" /><path class="stroke" d="M3 30L18 27L30 19L41 5M41 5H32M41 5V14" />`,
  cost: svg`<path class="warning" d="M22 3C24 11 34 15 34 28A12 12 0 0 1 10 28C10 18 18 15 22 3Z" />`,
  data: svg`<path class="field" d="M5 8H39V36H5Z" /><path class="stroke" d="M12 29H32M12 22H32" stroke-dasharray="4 4" />`,
};

export function tierMark(tier: string): TemplateResult {
  return html`<svg class="mark" viewBox="0 0 44 44" width="44" height="44" aria-hidden="true">${SHAPES[tier] ?? SHAPES['data']}</svg>`;
}
