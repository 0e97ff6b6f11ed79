import { takeRows } from './columns.ts';
import { makeTable, type Table } from './table.ts';

/** The table restricted to the given rows, in that order. */
export const takeTable = (table: Table, rows: ArrayLike<number>): Table =>
  makeTable([...table.columns].map(([name, column]) => [name, takeRows(column, rows)]));
