import type { TextColumn } from '../table/table.ts';
import type { GroupStatistic } from './step.ts';

/** A statistic of each group, on every row of it; with its standard uncertainty where that follows from the rows'. */
export interface GroupColumn {
  readonly values: Float64Array;
  readonly sd: Float64Array;
  /** Marks of values that are only bounds, as in a column. */
  readonly bounds: Int8Array;
}

/** Numbers the groups 0, 1, ... in order of first appearance. Rows of which a key is unknown form groups of their own kind. */
export function groupCodes(keys: readonly TextColumn[], rows: number): { codes: Int32Array; groups: number } {
  let codes = new Int32Array(rows);
  let groups = rows > 0 ? 1 : 0;
  for (const { codes: key, levels } of keys) {
    const width = levels.length + 1;
    const numbers = new Map<number, number>();
    const next = new Int32Array(rows);
    for (let row = 0; row < rows; row++) {
      const pair = codes[row] * width + key[row] + 1;
      let number = numbers.get(pair);
      if (number === undefined) {
        number = numbers.size;
        numbers.set(pair, number);
      }
      next[row] = number;
    }
    codes = next;
    groups = numbers.size;
  }
  return { codes, groups };
}

/** One number out of a group: its value, standard uncertainty and bound mark. */
interface Found {
  readonly value: number;
  readonly sd: number;
  readonly bound: number;
}
const UNKNOWN: Found = { value: Number.NaN, sd: Number.NaN, bound: 0 };

/**
 * The statistic over the known values of each group. The uncertainty of a mean takes the rows as independent; a value
 * picked out of the group brings its own; median, spread, count and rank have none that first order can give. A bound
 * among the values makes a mean, a median or an extreme a bound too, and a spread unknown.
 */
export function groupStatistic(
  statistic: GroupStatistic,
  column: GroupColumn,
  { codes, groups }: { codes: Int32Array; groups: number },
): GroupColumn {
  const { values } = column;
  const out = emptyColumn(values.length);
  if (statistic === 'previous') return previous(column, codes, groups, out);
  const members: number[][] = Array.from({ length: groups }, () => []);
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row])) members[codes[row]].push(row);
  if (statistic === 'rank') return ranks(values, members, out);
  const found = members.map((rows) => summarize(statistic, rows, column));
  for (let row = 0; row < values.length; row++) put(out, row, found[codes[row]]);
  return out;
}

const emptyColumn = (rows: number): GroupColumn => ({
  values: new Float64Array(rows).fill(Number.NaN),
  sd: new Float64Array(rows),
  bounds: new Int8Array(rows),
});

function put(out: GroupColumn, row: number, { value, sd, bound }: Found): void {
  out.values[row] = value;
  out.sd[row] = sd;
  out.bounds[row] = bound;
}

function summarize(statistic: GroupStatistic, rows: readonly number[], column: GroupColumn): Found {
  const { values, sd, bounds } = column;
  const n = rows.length;
  if (statistic === 'count') return { value: n, sd: 0, bound: 0 };
  if (n === 0) return UNKNOWN;
  const pick = (row: number): Found => ({ value: values[row], sd: sd[row], bound: bounds[row] });
  const all = rows.reduce((mark, row) => mark | (bounds[row] > 0 ? 1 : bounds[row] < 0 ? 2 : 0), 0);
  // Bounds to both sides leave nothing that can be said of a value made of them all.
  const bounded = (found: Omit<Found, 'bound'>): Found =>
    all === 3 ? UNKNOWN : { ...found, bound: all === 1 ? 1 : all === 2 ? -1 : 0 };
  const mean = rows.reduce((sum, row) => sum + values[row], 0) / n;
  switch (statistic) {
    case 'mean':
      return bounded({ value: mean, sd: Math.sqrt(rows.reduce((sum, row) => sum + sd[row] ** 2, 0)) / n });
    case 'median': {
      const sorted = rows.map((row) => values[row]).sort((a, b) => a - b);
      return bounded({ value: (sorted[(n - 1) >> 1] + sorted[n >> 1]) / 2, sd: Number.NaN });
    }
    case 'minimum':
      return extreme(pick(rows.reduce((best, row) => (values[row] < values[best] ? row : best))), all, -1);
    case 'maximum':
      return extreme(pick(rows.reduce((best, row) => (values[row] > values[best] ? row : best))), all, 1);
    case 'first':
      return pick(rows[0]);
    case 'last':
      return pick(rows[n - 1]);
    default: {
      if (n < 2 || all !== 0) return UNKNOWN;
      const squares = rows.reduce((sum, row) => sum + (values[row] - mean) ** 2, 0);
      return { value: Math.sqrt(squares / (n - 1)), sd: Number.NaN, bound: 0 };
    }
  }
}

/** The greatest is at least what it seems if any value is; `side` is 1 for the greatest and -1 for the least. */
function extreme(found: Found, marks: number, side: 1 | -1): Found {
  const outward = (marks & (side === 1 ? 1 : 2)) !== 0;
  if (outward) return found.bound === -side ? UNKNOWN : { ...found, bound: side };
  return found;
}

function previous(
  { values, sd, bounds }: GroupColumn,
  codes: Int32Array,
  groups: number,
  out: GroupColumn,
): GroupColumn {
  const last = new Int32Array(groups).fill(-1);
  for (let row = 0; row < values.length; row++) {
    const before = last[codes[row]];
    put(out, row, before < 0 ? UNKNOWN : { value: values[before], sd: sd[before], bound: bounds[before] });
    if (!Number.isNaN(values[row])) last[codes[row]] = row;
  }
  return out;
}

function ranks(values: Float64Array, members: readonly (readonly number[])[], out: GroupColumn): GroupColumn {
  for (const rows of members) {
    const sorted = [...rows].sort((a, b) => values[b] - values[a]);
    sorted.forEach((row, position) => {
      const tied = position > 0 && values[sorted[position - 1]] === values[row];
      out.values[row] = tied ? out.values[sorted[position - 1]] : position + 1;
    });
  }
  return out;
}
