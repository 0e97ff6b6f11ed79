import { type ReadingColumns, ROW } from './reading-columns.ts';
import { normalUnit, UnitMatcher } from './unit-matcher.ts';

export interface UnitsMatched {
  readonly matched: readonly { readonly found: string; readonly registered: string }[];
  readonly strangers: readonly { readonly found: string; readonly nearest: string; readonly readings: number }[];
  /** Ids that no register settles and that differ from one another in no more than what is normalized. */
  readonly alike: readonly (readonly string[])[];
  /** Near misses that the user accepted as the registered unit. */
  readonly merged: readonly { readonly found: string; readonly registered: string }[];
}

/**
 * Gives units the register's spelling. A near miss is renamed only where the user accepts it: all of them ('units') or
 * one by its found spelling ('units:B7X').
 */
export function matchUnits(
  columns: ReadingColumns,
  registered: readonly string[] | undefined,
  accept: readonly string[],
): UnitsMatched {
  const units = columns.texts.get('unit');
  if (!units) return { matched: [], strangers: [], merged: [], alike: [] };
  if (registered === undefined)
    return { matched: [], strangers: [], merged: [], alike: spelledAlike([...units.levels]) };
  const matcher = new UnitMatcher(registered);
  const readings = new Int32Array(units.levels.length);
  for (let row = 0; row < columns.rows; row++)
    if (columns.status[row] === ROW.accepted && units.code(row) >= 0) readings[units.code(row)]++;
  const [matched, merged] = [[], []] as { found: string; registered: string }[][];
  const strangers: { found: string; nearest: string; readings: number }[] = [];
  const become = new Map<string, string>();
  [...units.levels].forEach((found, code) => {
    if (readings[code] === 0) return;
    const { unit, how, nearest } = matcher.match(found);
    const isMerged =
      how === 'none' && nearest !== '' && (accept.includes('units') || accept.includes(`units:${found}`));
    if (how === 'normalized') matched.push({ found, registered: unit });
    if (isMerged) merged.push({ found, registered: nearest });
    else if (how === 'none') strangers.push({ found, nearest, readings: readings[code] });
    become.set(found, isMerged ? nearest : unit);
  });
  const alike = spelledAlike(strangers.map(({ found }) => found));
  if (matched.length + merged.length > 0) units.rename(columns.rows, (text) => become.get(text) ?? text);
  return { matched, strangers, merged, alike };
}

/** In a fleet of more units nobody would look them through. */
const MOST_COMPARED = 5000;

function spelledAlike(units: readonly string[]): string[][] {
  const byForm = new Map<string, string[]>();
  if (units.length > MOST_COMPARED) return [];
  for (const unit of units) {
    const form = normalUnit(unit);
    byForm.set(form, [...(byForm.get(form) ?? []), unit]);
  }
  return [...byForm.values()].filter(({ length }) => length > 1).map((spellings) => spellings.sort());
}
