import { html } from 'lit';
import { FUEL_USE_VOCABULARY } from '../../shared/readings/fuel-use-vocabulary.ts';
import '../parts/cell-tables.ts';
import '../parts/column-desk.ts';
import type { CellView } from '../parts/view.ts';

/** How the heads were understood, then the sheets. */
export const view: CellView = {
  render: (
    state,
    host,
  ) => html`<bv-columns .cell=${state} .host=${host} .vocabulary=${FUEL_USE_VOCABULARY}></bv-columns>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
