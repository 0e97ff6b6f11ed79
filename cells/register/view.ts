import { html } from 'lit';
import { REGISTER_VOCABULARY } from '../../shared/readings/register-vocabulary.ts';
import '../parts/cell-tables.ts';
import '../parts/column-desk.ts';
import type { CellView } from '../parts/view.ts';
import './gap-desk.ts';

/** What the register leaves empty and can be filled in, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`<bv-gaps .cell=${state} .host=${host}></bv-gaps>
    <bv-columns .cell=${state} .host=${host} .vocabulary=${REGISTER_VOCABULARY}></bv-columns>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
