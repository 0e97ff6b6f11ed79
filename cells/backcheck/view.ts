import { html } from 'lit';
import '../parts/cell-tables.ts';
import '../parts/picture.ts';
import '../parts/unit-lanes.ts';
import type { CellView } from '../parts/view.ts';

/** Every unit's fire lanes first, then pictures and numbers. */
export const view: CellView = {
  render: (state, host) => html`
    <bv-unit-lanes .cell=${state} .host=${host} table="drift"></bv-unit-lanes>
    ${state.description?.figures.map((figure) => html`<bv-picture .figure=${figure}></bv-picture>`)}
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
