/**
 * The table verbs: filter, order, group, join, roll up. arquero does the work and lives in this room only.
 *
 * arquero writes code for nearly every verb, so it is handed generated column names (c0, c1, ...) and typed values,
 * never a name or a text of the user's: text columns go in as ranks in code-unit order. It therefore runs in the worker
 * that owns the tables and in Node, not on the page, whose policy allows no code generation.
 *
 * Verbs return row numbers rather than tables where they can: the caller takes only the columns it needs.
 */
import { table as aqTable, desc, op, escape as plainly } from 'arquero';
import type { Column, Table } from './table.ts';

/** arquero's own table, as far as this file uses it; it never leaves the file. */
type Verbs = ReturnType<typeof aqTable>;

export interface OrderKey {
  readonly column: string;
  readonly descending?: boolean;
}

/**
 * Row numbers in the order of the keys; ties keep their order, unknowns come last in either direction.
 * Text is ordered by code unit, so that the order is the same on every machine.
 */
export function orderRows(table: Table, keys: readonly OrderKey[]): Uint32Array {
  const columns: Record<string, ArrayLike<number>> = {};
  const order = keys.flatMap(({ column, descending = false }, k) => {
    const values = rankValues(columnNamed(table, column));
    columns[`u${k}`] = Uint8Array.from(values, (value) => (Number.isNaN(value) ? 1 : 0));
    columns[`c${k}`] = values;
    return [`u${k}`, descending ? desc(`c${k}`) : `c${k}`];
  });
  const rows = Uint32Array.from({ length: table.rows }, (_, row) => row);
  if (order.length === 0 || table.rows === 0) return rows;
  return Uint32Array.from(
    aqTable(columns)
      .orderby(...order)
      .indices(),
  );
}

export interface Groups {
  /** Group number of every row, 0 .. count-1 in order of first appearance. */
  readonly of: Uint32Array;
  readonly count: number;
  /** First row of each group. */
  readonly firstRow: Uint32Array;
}

/** Rows that agree in all keys form a group; unknown agrees with unknown. */
export function groupRows(table: Table, keys: readonly string[]): Groups {
  if (table.rows === 0) return { of: new Uint32Array(0), count: 0, firstRow: new Uint32Array(0) };
  const { keys: of, rows, size } = keyed(table, keys).groups();
  return { of: Uint32Array.from(of), count: size, firstRow: Uint32Array.from(rows) };
}

/** Row numbers for which the test holds, in order. */
export function filterRows(table: Table, keep: (row: number) => boolean): Uint32Array {
  if (table.rows === 0) return new Uint32Array(0);
  const kept = aqTable({ c0: Uint32Array.from({ length: table.rows }, (_, row) => row) }).filter(
    plainly((d: { c0: number }) => keep(d.c0)),
  );
  return Uint32Array.from(kept.indices());
}

const ROLLS = {
  count: op.valid,
  sum: op.sum,
  mean: op.mean,
  min: op.min,
  max: op.max,
  median: op.median,
  stdev: op.stdev,
};

export interface Roll {
  readonly column: string;
  readonly by: keyof typeof ROLLS;
}

/** One row a group (in the order of groupRows): the rolled-up number of each roll; NaN where nothing is known. */
export function rollUp(table: Table, keys: readonly string[], rolls: readonly Roll[]): Float64Array[] {
  if (table.rows === 0) return rolls.map(() => new Float64Array(0));
  const values = Object.fromEntries(
    rolls.map(({ column }, v) => [`v${v}`, Array.from(rankless(columnNamed(table, column)), unknownToNull)]),
  );
  const grouped = keyed(table, keys)
    .assign(aqTable(values))
    .groupby(...keys.map((_, k) => `c${k}`));
  const rolled = grouped.rollup(Object.fromEntries(rolls.map(({ by }, v) => [`r${v}`, ROLLS[by](`v${v}`)])));
  return rolls.map((_, v) =>
    Float64Array.from(rolled.array(`r${v}`) as ArrayLike<number | undefined | null>, (x) => x ?? Number.NaN),
  );
}

const unknownToNull = (value: number): number | null => (Number.isNaN(value) ? null : value);

function keyed(table: Table, keys: readonly string[]): Verbs {
  const columns = Object.fromEntries(keys.map((key, k) => [`c${k}`, rankValues(columnNamed(table, key))]));
  return aqTable(columns).groupby(...keys.map((_, k) => `c${k}`));
}

/** @throws RangeError for a column that the table lacks: a programming error, since callers check schemas first. */
function columnNamed(table: Table, name: string): Column {
  const column = table.columns.get(name);
  if (!column) throw new RangeError(`the table has no column ${name}`);
  return column;
}

function rankless(column: Column): Float64Array {
  if (column.kind === 'text') throw new RangeError('text cannot be rolled up into a number');
  return column.values;
}

/** Numbers as they are; text as the rank of its level in code-unit order; NaN for unknown. */
function rankValues(column: Column): Float64Array {
  if (column.kind !== 'text') return column.values;
  const order = column.levels.map((_, code) => code).sort((a, b) => (column.levels[a] < column.levels[b] ? -1 : 1));
  const rank = new Float64Array(column.levels.length);
  order.forEach((code, place) => {
    rank[code] = place;
  });
  return Float64Array.from(column.codes, (code) => (code < 0 ? Number.NaN : rank[code]));
}
