import { type Markup, markup } from '../../shared/markup/markup.ts';
import { fieldWords } from '../../shared/messages/columns.ts';
import * as say from '../../shared/messages/report.ts';
import { OWN_NAME } from '../../shared/readings/understand-head.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { printTable, rowsWhere } from './sheet.ts';

const MOST_ROWS = 200;

/** What the columns of the readings' files were taken for, where their heads are not the notebook's own names. */
export function columnsSection(columns: Table | undefined): Markup {
  if (!columns || columns.rows === 0) return markup``;
  const reasons = textsOf(columns, 'reason');
  const others = rowsWhere(columns, (row) => textAt(reasons, row) !== OWN_NAME);
  const shown = others.slice(0, MOST_ROWS);
  return markup`<section><h2>${say.columnsHead()}</h2>
<p>${say.columnsLine(columns.rows - others.length, others.length)}</p>
<p class="quiet">${say.columnsShown(shown.length, others.length)}</p>${printTable(columns, shown, [
    { column: 'source_file', title: 'File' },
    { column: 'head', title: 'Head', raw: true },
    { column: 'first_value', title: 'First value', raw: true },
    { column: 'taken_for', title: 'Is', words: fieldWords },
    { column: 'unit_shown', title: 'In' },
    { column: 'fire', title: 'Fire' },
    { column: 'state', title: 'State' },
    { column: 'sure_pct', title: 'Sure, %' },
    { column: 'reason', title: 'Why' },
  ])}</section>`;
}
