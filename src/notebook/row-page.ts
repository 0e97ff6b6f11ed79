import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
import { twelveDigits } from '../../shared/quantities/twelve-digits.ts';
import { takeRows } from '../../shared/table/columns.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import { filterRows, orderRows } from '../../shared/table/verbs.ts';

/** The most rows handed out at once, however many are asked for: a page shows some dozens. */
const MOST_ROWS = 5000;

/** Rows of a table in the order and under the filter of a range, without its limits. Columns that are not there do nothing. */
export function selectRows(table: Table, { sort, filter }: RowRange): Uint32Array {
  const ordered =
    sort && table.columns.has(sort.column)
      ? orderRows(table, [sort])
      : Uint32Array.from({ length: table.rows }, (_, row) => row);
  const kept = filter && table.columns.get(filter.column);
  if (!kept) return ordered;
  const reads = rowsReading(table, kept, filter.text);
  return ordered.filter((row) => reads[row] === 1);
}

/** A range of the table's rows, filtered and sorted. */
export function rowPage(table: Table, range: RowRange, rows: Uint32Array = selectRows(table, range)): RowPage {
  const from = Math.max(0, Math.trunc(range.from) || 0);
  const to = Math.min(rows.length, Math.trunc(range.to) || 0, from + MOST_ROWS);
  const part = rows.subarray(from, Math.max(from, to));
  return {
    total: rows.length,
    from,
    columns: new Map([...table.columns].map(([name, column]) => [name, takeRows(column, part)])),
  };
}

/** 1 for each row whose column reads exactly this text as a file would carry it, unknown reading as ''. */
function rowsReading(table: Table, column: Column, text: string): Uint8Array {
  const marks = new Uint8Array(table.rows);
  const code = column.kind === 'text' ? (text === '' ? -1 : column.levels.indexOf(text)) : 0;
  if (column.kind === 'text' && code === -1 && text !== '') return marks;
  const write = column.kind === 'date' ? writeIsoDate : twelveDigits;
  const reads =
    column.kind === 'text'
      ? (row: number) => column.codes[row] === code
      : (row: number) => write(column.values[row]) === text;
  for (const row of filterRows(table, reads)) marks[row] = 1;
  return marks;
}
