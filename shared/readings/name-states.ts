import { GrowingTexts } from './growing-columns.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { keptText } from './word-meaning.ts';

/**
 * Names the readings without a state by the user's answer: the single reading of a unit, day, fuel and fire becomes what
 * the answer says; of several at different times the first is as found, the last as left, those between trials. A day
 * that has any named state is left as it is. Returns how many were named.
 */
export function nameStates(columns: ReadingColumns, answer: 'as_found' | 'as_left'): number {
  const state = columns.texts.get('state') ?? new GrowingTexts(keptText);
  columns.texts.set('state', state);
  state.ensure(columns.rows, columns.rows);
  const visits = new Map<string, number[]>();
  const taken = columns.numbers.get('taken_at')!;
  for (let row = 0; row < columns.rows; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    const parts = ['unit', 'fuel', 'fire'].map((name) => columns.texts.get(name)?.code(row) ?? -1);
    const key = `${parts.join('|')}|${Math.floor(taken.get(row))}`;
    const rows = visits.get(key);
    if (rows) rows.push(row);
    else visits.set(key, [row]);
  }
  let named = 0;
  for (const rows of visits.values()) {
    if (rows.some((row) => known(state, row))) continue;
    const order = rows.length > 1 ? rows.sort((a, b) => taken.get(a) - taken.get(b) || a - b) : rows;
    const tied = order.length > 1 && taken.get(order[0]) === taken.get(order[order.length - 1]);
    if (tied) continue;
    order.forEach((row, i) => {
      const name = order.length === 1 ? answer : i === 0 ? 'as_found' : i === order.length - 1 ? 'as_left' : 'trial';
      state.codes[row] = state.codeOfCanonical(name);
      named++;
    });
  }
  return named;
}

const known = (state: GrowingTexts, row: number): boolean => state.code(row) >= 0 && state.text(row) !== 'unknown';
