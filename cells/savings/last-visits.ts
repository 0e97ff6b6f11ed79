import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** One fire of a visit at which it was read both as found and as left: rows of the readings. */
export interface FirePair {
  readonly fire: string;
  readonly found: number;
  readonly left: number;
}

export interface TunedVisit {
  readonly unit: string;
  readonly fuel: string;
  readonly fires: readonly FirePair[];
}

/**
 * The last visit of each unit and fuel that has both states, in code-unit order of unit and fuel. A visit is what one
 * visit id names, else one day. Of several readings of a state the first found and the last left count.
 */
export function lastVisits(accepted: Table, derived: Table): TunedVisit[] {
  const [unit, fire, state, visit] = ['unit', 'fire', 'state', 'visit'].map((name) => textsOf(accepted, name));
  const fuel = textsOf(derived.rows === accepted.rows ? derived : accepted, 'fuel');
  const taken = numbersOf(accepted, 'taken_at');
  const visits = new Map<string, { day: number; fires: Map<string, { found: number; left: number }> }>();
  const byDay = Array.from({ length: accepted.rows }, (_, row) => row).sort((a, b) => taken[a] - taken[b] || a - b);
  for (const row of byDay) {
    const stateNow = textAt(state, row);
    if (stateNow !== 'as_found' && stateNow !== 'as_left') continue;
    const day = String(Math.floor(taken[row]));
    const name = [textAt(unit, row), textAt(fuel, row), textAt(visit, row) || day].join('\u0000');
    const entry = visits.get(name) ?? { day: taken[row], fires: new Map() };
    visits.set(name, entry);
    const pair = entry.fires.get(textAt(fire, row)) ?? { found: -1, left: -1 };
    if (stateNow === 'as_left') pair.left = row;
    else if (pair.found < 0) pair.found = row;
    entry.fires.set(textAt(fire, row), pair);
  }
  const last = new Map<string, { day: number; visit: TunedVisit }>();
  for (const [name, { day, fires }] of visits) {
    const pairs = [...fires]
      .filter(([, { found, left }]) => found >= 0 && left >= 0)
      .map(([fireName, pair]) => ({ fire: fireName, ...pair }));
    const [unitName, fuelName] = name.split('\u0000');
    const key = `${unitName}\u0000${fuelName}`;
    if (pairs.length > 0 && !(day < (last.get(key)?.day ?? Number.NEGATIVE_INFINITY)))
      last.set(key, { day, visit: { unit: unitName, fuel: fuelName, fires: pairs } });
  }
  return [...last].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry.visit);
}
