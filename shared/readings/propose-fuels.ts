import { impliedCo2maxPct } from '../combustion/flue-gas.ts';
import * as say from '../messages/import.ts';
import { type Naming, unitRuns } from './naming.ts';
import type { ReadingColumns } from './reading-columns.ts';

/** CO2max by stoichiometry: natural gas 11.9, propane and LPG 13.7 to 13.8, No. 2 oil 15.4; the windows do not touch. */
const WINDOWS: readonly (readonly [fuel: string, from: number, to: number])[] = [
  ['natural_gas', 11.3, 12.5],
  ['propane', 13.2, 14.3],
  ['no2_oil', 14.9, 15.9],
];
const LEAST_READINGS = 3;
/** Of a unit's readings so many may lie outside the window of its fuel: mistyped, or read while it purged. */
const STRAY_SHARE = 0.2;
/** Beyond this O2 the quotient says little. */
const HIGHEST_O2_PCT = 12;

/**
 * Proposes fuels for readings of which neither they nor the register name one, by the CO2max that O2 and CO2 imply. A unit
 * whose readings fall into two windows burns two fuels, and each reading is named by its own.
 */
export function proposeFuels(columns: ReadingColumns, order: Int32Array, known: ReadonlySet<string>): Naming[] {
  const fuel = columns.texts.get('fuel');
  const [o2, co2] = ['o2_pct', 'co2_pct'].map((name) => columns.numbers.get(name));
  if (!o2?.values.length || !co2?.values.length) return [];
  const namings: Naming[] = [];
  for (const [unit, all] of unitRuns(columns, order)) {
    if (known.has(unit)) continue;
    const rows = Array.from(all).filter((row) => (fuel?.code(row) ?? -1) < 0);
    const implied = new Map<number, number>();
    for (const row of rows)
      if (o2.get(row) < HIGHEST_O2_PCT && co2.get(row) > 0)
        implied.set(row, impliedCo2maxPct(o2.get(row), co2.get(row)));
    const naming = fuelsOf(unit, rows, implied);
    if (naming) namings.push(naming);
  }
  return namings;
}

function fuelsOf(unit: string, rows: readonly number[], implied: ReadonlyMap<number, number>): Naming | undefined {
  const windows = WINDOWS.map(([fuel, from, to]) => ({
    fuel,
    inside: [...implied].filter(([, max]) => max >= from && max <= to).map(([row]) => row),
  })).filter(({ inside }) => inside.length > 0);
  const inside = windows.filter((window) => window.inside.length >= LEAST_READINGS);
  const covered = inside.reduce((sum, window) => sum + window.inside.length, 0);
  if (inside.length === 0 || covered < (1 - STRAY_SHARE) * implied.size) return undefined;
  const evidence = say.fuelEvidence(
    inside.map((window) => say.fuelWindow(window.fuel, window.inside.length, ...range(window.inside, implied))),
  );
  if (inside.length === 1) return { kind: 'fuels', unit, rows, words: rows.map(() => inside[0].fuel), evidence };
  const named = inside.flatMap((window) => window.inside.map((row) => [row, window.fuel] as const));
  const sorted = named.sort(([a], [b]) => a - b);
  return { kind: 'fuels', unit, rows: sorted.map(([row]) => row), words: sorted.map(([, fuel]) => fuel), evidence };
}

function range(rows: readonly number[], implied: ReadonlyMap<number, number>): [string, string] {
  const values = rows.map((row) => implied.get(row) ?? Number.NaN);
  return [Math.min(...values).toFixed(1), Math.max(...values).toFixed(1)];
}
