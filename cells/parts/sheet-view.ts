import { html } from 'lit';
import './cell-tables.ts';
import './picture.ts';
import type { CellView } from './view.ts';

/** The view of a kind without one of its own: its pictures and its tables as sheets. */
export const sheetView: CellView = {
  render: (state, host) => html`
    ${state.description?.figures.map((figure) => html`<bv-picture .figure=${figure}></bv-picture>`)}
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
