import type { GrowingTexts } from './growing-columns.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { rowOrigin } from './row-origin.ts';

/** What an empty cell of these columns means. */
export const EMPTY_MEANS: Readonly<Record<string, string>> = { fire: 'unnamed', state: 'unknown' };

/** Accepted rows by unit, time, fire, state, file name and place in the file; text by code unit. */
export function sortRows(columns: ReadingColumns): Int32Array {
  const unit = ranks(columns.texts.get('unit'));
  const fire = ranks(columns.texts.get('fire'), EMPTY_MEANS['fire']);
  const state = ranks(columns.texts.get('state'), EMPTY_MEANS['state']);
  const taken = columns.numbers.get('taken_at')!;
  const starts = new Int32Array(unit.count + 2);
  let accepted = 0;
  for (let row = 0; row < columns.rows; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    accepted++;
    starts[unit.of(row) + 2]++;
  }
  for (let i = 1; i < starts.length; i++) starts[i] += starts[i - 1];
  const order = new Int32Array(accepted);
  for (let row = 0; row < columns.rows; row++)
    if (columns.status[row] === ROW.accepted) order[starts[unit.of(row) + 1]++] = row;
  const origin = rowOrigin(columns);
  const compare = (a: number, b: number): number =>
    taken.values[a] - taken.values[b] || fire.of(a) - fire.of(b) || state.of(a) - state.of(b) || origin(a, b);
  for (let i = 0; i <= unit.count; i++) {
    const bucket = order.subarray(starts[i], starts[i + 1]);
    if (!isSorted(bucket, compare)) bucket.sort(compare);
  }
  return order;
}

function isSorted(rows: Int32Array, compare: (a: number, b: number) => number): boolean {
  for (let i = 1; i < rows.length; i++) if (compare(rows[i - 1], rows[i]) > 0) return false;
  return true;
}

/** Place of each row's text among the levels in code-unit order. */
function ranks(column: GrowingTexts | undefined, empty = ''): { of: (row: number) => number; count: number } {
  const levels = [...new Set([...(column?.levels ?? []), empty])].sort((a, b) => (a < b ? -1 : 1));
  const rank = new Map(levels.map((level, i) => [level, i]));
  const byCode = Int32Array.from(column?.levels ?? [], (level) => rank.get(level) ?? 0);
  const unknown = rank.get(empty) ?? 0;
  return {
    of: (row) => {
      const code = column?.code(row) ?? -1;
      return code < 0 ? unknown : byCode[code];
    },
    count: levels.length,
  };
}
