import { html } from 'lit';
import '../parts/accept-list.ts';
import '../parts/cell-tables.ts';
import type { CellView } from '../parts/view.ts';
import './account-list.ts';
import './naming-desk.ts';

/** The account of every file, what evidence proposes, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`
    <bv-account .cell=${state} .host=${host}></bv-account>
    <bv-namings .cell=${state} .host=${host}></bv-namings>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
