import { type Markup, markup } from '../../shared/markup/markup.ts';
import * as say from '../../shared/messages/report.ts';
import { numbersOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { printTable, rowsWhere } from './sheet.ts';

const SET_ASIDE_ROWS = 120;

/** What became of every reading that the files proposed. */
export function accountSection(account: Table | undefined, setAside: Table | undefined): Markup {
  if (!account) return markup``;
  const total = (column: string): number => numbersOf(account, column).reduce((sum, value) => sum + value, 0);
  const aside = setAside ? rowsWhere(setAside, () => true) : [];
  const shown = aside.slice(0, SET_ASIDE_ROWS);
  return markup`<section><h2>${say.accountHead()}</h2>
<p>${say.accountLine(total('rows_read'), total('accepted'), total('set_aside'), total('duplicates'))}</p>
${printTable(
  account,
  rowsWhere(account, () => true),
  [
    { column: 'file', title: 'File' },
    { column: 'rows_read', title: 'Readings' },
    { column: 'accepted', title: 'Accepted' },
    { column: 'set_aside', title: 'Set aside' },
    { column: 'duplicates', title: 'Duplicates' },
  ],
)}
${
  setAside && shown.length > 0
    ? markup`<h3>${say.setAsideHead()}</h3><p class="quiet">${say.setAsideShown(shown.length, aside.length)}</p>${printTable(
        setAside,
        shown,
        [
          { column: 'source_file', title: 'File' },
          { column: 'source_line', title: 'Line' },
          { column: 'reason', title: 'Why' },
          { column: 'original', title: 'As it stands in the file', raw: true },
        ],
      )}`
    : markup``
}</section>`;
}
