import { html } from 'lit';
import '../parts/cell-tables.ts';
import '../parts/corrections-list.ts';
import type { CellView } from '../parts/view.ts';

/** Every correction with its way back, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`
    <bv-corrections .cell=${state.name} .host=${host}></bv-corrections>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
