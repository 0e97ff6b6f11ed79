import type { CellName } from '../../shared/cell.ts';
import type { RowRange } from '../../shared/cell-state.ts';
import type { RowKey } from '../../shared/corrections/correction.ts';
import { keyOfRow } from '../../shared/corrections/key-of-row.ts';
import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { rowAtPlace } from './row-page.ts';
import type { Session } from './session.ts';

/** Where a reading stood in its file: shows that the row asked for is still the row that was seen. */
export interface SeenLine {
  readonly file: string;
  readonly line: number;
}

/**
 * The key for a correction of the reading that a sheet of the cell shows at this place. Where the cell holds corrected
 * readings, the key names the row as it was before they were corrected, since that is what corrections go by.
 */
export function readingKey(
  session: Session,
  cell: CellName,
  range: RowRange,
  place: number,
  seen: SeenLine,
): Outcome<RowKey> {
  const tables = session.result(cell)?.tables ?? {};
  const shown = tables[range.table];
  const row = shown && rowAtPlace(shown, range, place);
  if (row === undefined || !isSeen(shown, row, seen)) return fail(say.readingMoved());
  const before = tables['imported-rows'];
  if (!before) return succeed(keyOfRow(shown, row));
  const imported = session.result(readBy(session, cell))?.tables[range.table];
  const origin = numbersOf(before, 'row')[row];
  if (!imported || !isSeen(imported, origin, seen)) return fail(say.readingMoved());
  return succeed(keyOfRow(imported, origin));
}

function readBy(session: Session, cell: CellName): CellName {
  return String(session.document().cells.find(({ name }) => name === cell)?.parameters['readings'] ?? 'readings');
}

function isSeen(table: Table, row: number, { file, line }: SeenLine): boolean {
  if (row >= table.rows) return false;
  return textAt(textsOf(table, 'source_file'), row) === file && numbersOf(table, 'source_line')[row] === line;
}
