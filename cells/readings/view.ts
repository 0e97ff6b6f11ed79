import { html } from 'lit';
import { READINGS_VOCABULARY } from '../../shared/readings/vocabulary.ts';
import '../parts/accept-desk.ts';
import '../parts/cell-tables.ts';
import '../parts/column-desk.ts';
import type { CellView } from '../parts/view.ts';
import './account-list.ts';
import { proposedNames } from './proposed-names.ts';

/** The account of every file, how its heads were understood, what evidence proposes, then the sheets. */
export const view: CellView = {
  render: (state, host) => html`
    <bv-account .cell=${state} .host=${host}></bv-account>
    <bv-columns .cell=${state} .host=${host} .vocabulary=${READINGS_VOCABULARY}></bv-columns>
    <bv-accept-desk .cell=${state} .host=${host} .source=${proposedNames}></bv-accept-desk>
    <bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables>`,
};
