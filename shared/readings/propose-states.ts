import * as say from '../messages/import.ts';
import { dayRuns, type Naming, namingOf, unitRuns } from './naming.ts';
import type { ReadingColumns } from './reading-columns.ts';

/**
 * Proposes states for visits of which no reading names one, by the order of the tests at each fire and fuel: the first as
 * found, the last as left, those between trials. A single reading of a visit has no order; only the user knows what it is.
 */
export function proposeStates(columns: ReadingColumns, order: Int32Array): Naming[] {
  const state = columns.texts.get('state');
  const isUnknown = (row: number): boolean => ['', 'unknown'].includes(state?.text(row) ?? '');
  const namings: Naming[] = [];
  for (const [unit, all] of unitRuns(columns, order)) {
    const rows: number[] = [];
    const words: string[] = [];
    let visits = 0;
    let byLine = false;
    for (const visit of dayRuns(columns, Array.from(all))) {
      const before = rows.length;
      for (const tests of byFire(columns, visit)) {
        if (tests.length < 2 || !tests.every(isUnknown)) continue;
        const sorted = inOrder(columns, tests);
        if (!sorted) continue;
        byLine ||= sorted.byLine;
        rows.push(...sorted.tests);
        words.push(
          ...sorted.tests.map((_, i) => (i === 0 ? 'as_found' : i === tests.length - 1 ? 'as_left' : 'trial')),
        );
      }
      if (rows.length > before) visits++;
    }
    if (rows.length > 0) namings.push(namingOf('states', unit, rows, words, say.stateEvidence(visits, byLine)));
  }
  return namings;
}

function byFire(columns: ReadingColumns, visit: readonly number[]): number[][] {
  const groups = new Map<string, number[]>();
  for (const row of visit) {
    const key = ['fire', 'fuel'].map((name) => columns.texts.get(name)?.code(row) ?? -1).join(' ');
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()];
}

/** By the clock; tests of a day without times by their lines, if one file has them all. undefined where nothing orders them. */
function inOrder(columns: ReadingColumns, rows: readonly number[]): { tests: number[]; byLine: boolean } | undefined {
  const taken = columns.numbers.get('taken_at');
  const at = (row: number): number => taken?.get(row) ?? Number.NaN;
  const tests = [...rows].sort((a, b) => at(a) - at(b) || a - b);
  const tied = tests.some((row, i) => i > 0 && at(row) === at(tests[i - 1]));
  if (!tied) return { tests, byLine: false };
  const timeless = tests.every((row) => Number.isInteger(at(row)));
  const oneFile = tests.every((row) => columns.fileOf(row) === columns.fileOf(tests[0]));
  return timeless && oneFile ? { tests, byLine: true } : undefined;
}
