import { applyNaming, dayRuns, namingOf, unitRuns } from './naming.ts';
import { proposeStates } from './propose-states.ts';
import type { ReadingColumns } from './reading-columns.ts';

/**
 * Names the readings without a state by the user's answer: the single reading of a unit, day, fuel and fire becomes what
 * the answer says; of several at different times the first is as found, the last as left, those between trials. A day
 * that has any named state is left as it is. Returns how many were named.
 */
export function nameStates(columns: ReadingColumns, order: Int32Array, answer: 'as_found' | 'as_left'): number {
  const singles = singleReadings(columns, order);
  const several = proposeStates(columns, order);
  for (const naming of several) applyNaming(columns, naming);
  const words = singles.map(() => answer);
  applyNaming(columns, namingOf('states', '', singles, words, ''));
  return singles.length + several.reduce((sum, { readings }) => sum + readings, 0);
}

/** Readings without a state that are the only ones of their unit, day, fuel and fire. */
export function singleReadings(columns: ReadingColumns, order: Int32Array): number[] {
  const [state, fire, fuel] = ['state', 'fire', 'fuel'].map((name) => columns.texts.get(name));
  const key = (row: number): string => `${fire?.code(row) ?? -1} ${fuel?.code(row) ?? -1}`;
  const singles: number[] = [];
  for (const [, rows] of unitRuns(columns, order))
    for (const visit of dayRuns(columns, Array.from(rows))) {
      const counts = new Map<string, number>();
      for (const row of visit) counts.set(key(row), (counts.get(key(row)) ?? 0) + 1);
      for (const row of visit)
        if (counts.get(key(row)) === 1 && ['', 'unknown'].includes(state?.text(row) ?? '')) singles.push(row);
    }
  return singles;
}
