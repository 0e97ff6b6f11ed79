import { html } from 'lit';
import '../parts/accept-list.ts';
import '../parts/cell-tables.ts';
import type { CellView } from '../parts/view.ts';
import './told-desk.ts';

/** Events that notes tell of, to be accepted or not, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`<bv-told-events .cell=${state} .host=${host}></bv-told-events>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
