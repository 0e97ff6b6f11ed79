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

/** The number in the table of a row that a page shows at this place of the range's order; undefined beyond its end. */
export function rowAtPlace(table: Table, range: RowRange, place: number): number | undefined {
  const rows = range.sort || range.filter ? selectedBefore(table, range) : undefined;
  return rows ? rows.at(place) : place < table.rows ? place : undefined;
}

/** A range of the table's rows, filtered and sorted. */
export function rowPage(table: Table, range: RowRange): RowPage {
  const rows = range.sort || range.filter ? selectedBefore(table, range) : undefined;
  const total = rows?.length ?? table.rows;
  const from = Math.max(0, Math.trunc(range.from) || 0);
  const to = Math.max(from, Math.min(total, Math.trunc(range.to) || 0, from + MOST_ROWS));
  const part = rows?.subarray(from, to) ?? Uint32Array.from({ length: to - from }, (_, i) => from + i);
  return {
    total,
    from,
    ...(rows && { rows: part.slice() }),
    columns: new Map([...table.columns].map(([name, column]) => [name, ownLevels(takeRows(column, part))])),
  };
}

/** The last selection of each table: a sheet that is scrolled asks for page after page of the same order. */
const SELECTIONS = new WeakMap<Table, { readonly key: string; readonly rows: Uint32Array }>();

function selectedBefore(table: Table, range: RowRange): Uint32Array {
  const { sort, filter } = range;
  const key = JSON.stringify([sort?.column, sort?.descending, filter?.column, filter?.text]);
  const before = SELECTIONS.get(table);
  if (before?.key === key) return before.rows;
  const rows = selectRows(table, range);
  SELECTIONS.set(table, { key, rows });
  return rows;
}

/** Only the texts that the page's rows hold: a page of a million notes must not carry the other notes along. */
function ownLevels(column: Column): Column {
  if (column.kind !== 'text' || column.levels.length <= column.codes.length) return column;
  const levels: string[] = [];
  const known = new Map<number, number>();
  const codes = column.codes.map((code) => {
    if (code < 0) return -1;
    const own = known.get(code) ?? levels.push(column.levels[code]) - 1;
    known.set(code, own);
    return own;
  });
  return { kind: 'text', codes, levels };
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
