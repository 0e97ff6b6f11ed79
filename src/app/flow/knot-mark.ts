import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { CellState } from '../../../shared/cell-state.ts';

/**
 * The knot of a cell, drawn as a fitting of a gas train about (0, 0), 24 px across:
 * a plain union where rows flow, a union filled as far as the work is done, a shut valve where it stopped,
 * a valve with a question mark where the user must turn it, an open ring where it waits.
 */
export function knotShape({
  phase,
  progress,
  stale,
}: Pick<CellState, 'phase' | 'progress' | 'stale'>): SVGTemplateResult {
  switch (phase) {
    case 'failed':
      return svg`<path class="valve shut" d="M-12 -9 L0 0 L-12 9Z M12 -9 L0 0 L12 9Z" /><path class="stem" d="M0 0V-11M-6 -11H6" />`;
    case 'asking':
      return svg`<path class="valve open" d="M-12 -9 L0 0 L-12 9Z M12 -9 L0 0 L12 9Z" /><circle class="asked" cy="-12" r="8" /><text class="query" y="-7.5" text-anchor="middle">?</text>`;
    case 'running':
      return svg`<circle class="ring" r="10" /><path class="share" d=${pie(Math.min(0.999, Math.max(0.02, progress)), 7)} />`;
    case 'waiting':
    case 'idle':
      return svg`<circle class="ring dashed" r="9" />`;
    default:
      return stale
        ? svg`<circle class="ring" r="10" /><path class="share" d="M-7 0A7 7 0 0 0 7 0Z" />`
        : svg`<circle class="ring" r="10" /><circle class="share" r="5.5" />`;
  }
}

function pie(share: number, r: number): string {
  const angle = share * 2 * Math.PI;
  return `M0 0V${-r}A${r} ${r} 0 ${share > 0.5 ? 1 : 0} 1 ${(Math.sin(angle) * r).toFixed(2)} ${(-Math.cos(angle) * r).toFixed(2)}Z`;
}

/** A cell whose kind nobody knows here is drawn as one that waits: nothing in it went wrong. */
export const asWaiting = (cell: CellState): CellState => ({ ...cell, phase: 'idle' });

/** The knot alone, beside the name of a strip; its meaning stands in words next to it. */
export function knotMark(cell: CellState): TemplateResult {
  return html`<svg class="knot" viewBox="-16 -22 32 38" width="32" height="38" aria-hidden="true">${knotShape(cell)}</svg>`;
}
