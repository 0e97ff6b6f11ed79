import { html } from 'lit';
import '../parts/cell-tables.ts';
import '../parts/proposal-list.ts';
import type { CellView } from '../parts/view.ts';
import './check-desk.ts';

/** What can be decided about the findings (the suspects' switch, the proposed repairs), then the sheets. */
export const view: CellView = {
  render: (state, host) => html`<bv-check-desk .cell=${state} .host=${host}></bv-check-desk>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
