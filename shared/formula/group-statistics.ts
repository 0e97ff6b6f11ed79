import type { TextColumn } from '../table/table.ts';
import type { GroupStatistic } from './step.ts';

/** A statistic of each group, on every row of it; with its standard uncertainty where that follows from the rows'. */
export interface GroupColumn {
  readonly values: Float64Array;
  readonly sd: Float64Array;
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

/**
 * The statistic over the known values of each group. The uncertainty of a mean takes the rows as independent; a value
 * picked out of the group brings its own; median, spread, count and rank have none that first order can give.
 */
export function groupStatistic(
  statistic: GroupStatistic,
  values: Float64Array,
  sd: Float64Array,
  { codes, groups }: { codes: Int32Array; groups: number },
): GroupColumn {
  if (statistic === 'previous') return previous(values, sd, codes, groups);
  const members: number[][] = Array.from({ length: groups }, () => []);
  for (let row = 0; row < values.length; row++) if (!Number.isNaN(values[row])) members[codes[row]].push(row);
  const out = { values: new Float64Array(values.length).fill(Number.NaN), sd: new Float64Array(values.length) };
  if (statistic === 'rank') return ranks(values, members, out);
  const found = members.map((rows) => summarize(statistic, rows, values, sd));
  for (let row = 0; row < values.length; row++) [out.values[row], out.sd[row]] = found[codes[row]];
  return out;
}

function summarize(
  statistic: GroupStatistic,
  rows: readonly number[],
  values: Float64Array,
  sd: Float64Array,
): readonly [number, number] {
  const n = rows.length;
  if (statistic === 'count') return [n, 0];
  if (n === 0) return [Number.NaN, Number.NaN];
  const pick = (row: number): readonly [number, number] => [values[row], sd[row]];
  const mean = rows.reduce((sum, row) => sum + values[row], 0) / n;
  switch (statistic) {
    case 'mean':
      return [mean, Math.sqrt(rows.reduce((sum, row) => sum + sd[row] ** 2, 0)) / n];
    case 'first':
      return pick(rows[0]);
    case 'last':
      return pick(rows[n - 1]);
    case 'minimum':
      return pick(rows.reduce((best, row) => (values[row] < values[best] ? row : best)));
    case 'maximum':
      return pick(rows.reduce((best, row) => (values[row] > values[best] ? row : best)));
    case 'median': {
      const sorted = rows.map((row) => values[row]).sort((a, b) => a - b);
      return [(sorted[(n - 1) >> 1] + sorted[n >> 1]) / 2, Number.NaN];
    }
    default:
      return [
        n < 2 ? Number.NaN : Math.sqrt(rows.reduce((sum, row) => sum + (values[row] - mean) ** 2, 0) / (n - 1)),
        Number.NaN,
      ];
  }
}

function previous(values: Float64Array, sd: Float64Array, codes: Int32Array, groups: number): GroupColumn {
  const out = { values: new Float64Array(values.length), sd: new Float64Array(values.length) };
  const last = new Int32Array(groups).fill(-1);
  for (let row = 0; row < values.length; row++) {
    const before = last[codes[row]];
    out.values[row] = before < 0 ? Number.NaN : values[before];
    out.sd[row] = before < 0 ? Number.NaN : sd[before];
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
