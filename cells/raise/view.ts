import { html } from 'lit';
import { allRaisedTable } from '../../shared/messages/page.ts';
import '../parts/cell-tables.ts';
import '../parts/corrections-list.ts';
import '../parts/finding-working.ts';
import '../parts/readings-sheet.ts';
import type { CellView } from '../parts/view.ts';
import '../parts/worked-sheet.ts';
import './raised-list.ts';

/** The raised units as tags; the sheet with all columns stands folded below. */
export const view: CellView = {
  render: (state, host) => html`<bv-raised .cell=${state} .host=${host}></bv-raised>
    <details><summary>${allRaisedTable()}</summary><bv-cell-tables .cell=${state} .host=${host}></bv-cell-tables></details>`,
};
