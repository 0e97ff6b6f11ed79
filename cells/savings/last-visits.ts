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
  const unit = textsOf(accepted, 'unit');
  const fuel = textsOf(derived.rows === accepted.rows ? derived : accepted, 'fuel');
  const visits: TunedVisit[] = [];
  const last = lastPair(accepted);
  for (const rows of groupedRows(accepted, unit.codes, fuel.codes, fuel.levels.length + 1)) {
    const fires = last(rows);
    if (fires.length > 0) visits.push({ unit: textAt(unit, rows[0]), fuel: textAt(fuel, rows[0]), fires });
  }
  return visits.sort((a, b) => byCodeUnit(a.unit, b.unit) || byCodeUnit(a.fuel, b.fuel));
}

const byCodeUnit = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Rows of each unit and fuel, in the table's order. */
function groupedRows(table: Table, units: Int32Array, fuels: Int32Array, fuelCodes: number): Iterable<number[]> {
  const groups = new Map<number, number[]>();
  for (let row = 0; row < table.rows; row++) {
    const key = units[row] * fuelCodes + fuels[row] + 1;
    const rows = groups.get(key);
    if (rows) rows.push(row);
    else groups.set(key, [row]);
  }
  return groups.values();
}

/** The pairs of the last visit among some rows that has any. */
function lastPair(accepted: Table): (rows: readonly number[]) => FirePair[] {
  const [fire, state, visit] = ['fire', 'state', 'visit'].map((name) => textsOf(accepted, name));
  const taken = numbersOf(accepted, 'taken_at');
  const visitOf = (row: number): string => textAt(visit, row) || String(Math.floor(taken[row]));
  return (rows) => {
    const latestFirst = rows.toSorted((a, b) => taken[b] - taken[a] || b - a);
    const seen = new Set<string>();
    for (const row of latestFirst) {
      const name = visitOf(row);
      if (seen.has(name)) continue;
      seen.add(name);
      const pairs = new Map<string, { found: number; left: number }>();
      for (const other of latestFirst) {
        if (visitOf(other) !== name) continue;
        const pair = pairs.get(textAt(fire, other)) ?? { found: -1, left: -1 };
        const read = textAt(state, other);
        if (read === 'as_found') pair.found = other;
        else if (read === 'as_left' && pair.left < 0) pair.left = other;
        pairs.set(textAt(fire, other), pair);
      }
      const complete = [...pairs].filter(([, { found, left }]) => found >= 0 && left >= 0);
      if (complete.length > 0) return complete.map(([fireName, pair]) => ({ fire: fireName, ...pair }));
    }
    return [];
  };
}
