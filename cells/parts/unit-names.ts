import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';

/** Rows looked through for names; a sheet has them all. */
const MOST_ROWS = 50_000;
const ROWS_A_TIME = 5000;

/** The different units that a table names, in the order of their first row. */
export async function unitNames(table: string, fetch: (range: RowRange) => Promise<RowPage>): Promise<string[]> {
  const names = new Set<string>();
  for (let from = 0, total = 1; from < Math.min(total, MOST_ROWS); from += ROWS_A_TIME) {
    const page = await fetch({ table, from, to: from + ROWS_A_TIME });
    total = page.total;
    const rows = Math.min(total - from, ROWS_A_TIME);
    const units = textsOf({ rows, columns: page.columns }, 'unit');
    for (let row = 0; row < rows; row++) names.add(textAt(units, row));
  }
  names.delete('');
  return [...names];
}
