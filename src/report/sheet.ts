import { type Markup, markup } from '../../shared/markup/markup.ts';
import { percent } from '../../shared/messages/words.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
import { textAt } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** A column as the report prints it; unknown is left empty. */
export interface PrintedColumn {
  readonly column: string;
  readonly title: string;
  readonly digits?: number;
  readonly raw?: boolean;
  /** A share or a chance of 0 to 1, printed in percent. */
  readonly share?: boolean;
  /** How many of the table's unit one of the printed unit has. */
  readonly per?: number;
  /** Turns a code of the table into words. */
  readonly words?: (code: string) => string;
}

/** Ids and names up to this length are never broken over lines. */
const SHORT_TEXT = 13;

/** Rows of a table as a printed table. Columns that the table lacks, or that are wholly unknown, are left out. */
export function printTable(table: Table, rows: readonly number[], columns: readonly PrintedColumn[]): Markup {
  const shown = columns.filter(({ column }) => rows.some((row) => valueText(table, column, row, 0) !== ''));
  if (rows.length === 0 || shown.length === 0) return markup``;
  const kind = ({ column, raw, words = (code) => code }: PrintedColumn): string => {
    const type = table.columns.get(column)?.kind;
    if (raw) return 'raw';
    if (type === 'number') return 'n';
    return type === 'date' ||
      rows.every((row) => cellText(table, { column, title: '', words }, row).length <= SHORT_TEXT)
      ? 'd'
      : '';
  };
  const classes = new Map(shown.map((column) => [column, kind(column)]));
  return markup`<table><thead><tr>${shown.map((column) => markup`<th class="${classes.get(column) ?? ''}">${column.title}</th>`)}</tr></thead>
<tbody>${rows.map(
    (row) =>
      markup`<tr>${shown.map((column) => markup`<td class="${classes.get(column) ?? ''}">${cellText(table, column, row)}</td>`)}</tr>
`,
  )}</tbody></table>`;
}

function cellText(table: Table, { column, digits = 0, share, per = 1, words }: PrintedColumn, row: number): string {
  const of = table.columns.get(column);
  if (share && of?.kind === 'number') return Number.isFinite(of.values[row]) ? percent(of.values[row]) : '';
  const text = valueText(table, column, row, digits, per);
  return words && text !== '' ? words(text) : text;
}

/** One value as people read it; '' for unknown. */
export function valueText(table: Table, name: string, row: number, digits: number, per = 1): string {
  const column = table.columns.get(name);
  if (!column) return '';
  if (column.kind === 'text') return textAt(column, row);
  const value = column.values[row];
  if (!Number.isFinite(value)) return '';
  if (column.kind === 'date') return writeIsoDate(value).slice(0, 10);
  const bound = column.bounds?.[row] ?? 0;
  const written = (value / per).toFixed(digits);
  return `${bound > 0 ? '>' : bound < 0 ? '<' : ''}${Number(written) === 0 ? written.replace('-', '') : written}`;
}

/** All rows of a table for which the test holds. */
export const rowsWhere = (table: Table, keep: (row: number) => boolean): number[] =>
  Array.from({ length: table.rows }, (_, row) => row).filter(keep);
