import { html } from 'lit';
import '../parts/cell-tables.ts';
import type { CellView } from '../parts/view.ts';
import './account-list.ts';

/** The account of every file, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`
    <bv-account .cell=${state} .host=${host}></bv-account>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
