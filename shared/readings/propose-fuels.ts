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
  let implied = new Float64Array(64);
  for (const [unit, all] of unitRuns(columns, order)) {
    if (known.has(unit)) continue;
    const rows = fuel ? all.filter((row) => fuel.code(row) < 0) : all;
    if (implied.length < rows.length) implied = new Float64Array(2 * rows.length);
    for (let i = 0; i < rows.length; i++) {
      const o2Pct = o2.get(rows[i]);
      const co2Pct = co2.get(rows[i]);
      implied[i] = o2Pct < HIGHEST_O2_PCT && co2Pct > 0 ? impliedCo2maxPct(o2Pct, co2Pct) : Number.NaN;
    }
    const naming = fuelsOf(unit, rows, implied);
    if (naming) namings.push(naming);
  }
  return namings;
}

/** Most units have as many readings as the one before: their words are one array. */
let lastWords: readonly string[] = [];

function repeated(word: string, count: number): readonly string[] {
  if (lastWords.length !== count || lastWords[0] !== word) lastWords = new Array<string>(count).fill(word);
  return lastWords;
}

/** Readings of one unit within one window. */
interface Inside {
  readonly fuel: string;
  readonly readings: number;
  readonly least: number;
  readonly most: number;
}

/** `implied` begins with the CO2max of each row, NaN where it says nothing. */
function fuelsOf(unit: string, rows: Int32Array, implied: Float64Array): Naming | undefined {
  const inside: Inside[] = [];
  let covered = 0;
  for (const window of WINDOWS) {
    const found = insideOf(window, implied, rows.length);
    if (found.readings < LEAST_READINGS) continue;
    inside.push(found);
    covered += found.readings;
  }
  if (inside.length === 0 || covered < (1 - STRAY_SHARE) * countKnown(implied, rows.length)) return undefined;
  const evidence = say.fuelEvidence(
    inside.map(({ fuel, readings, least, most }) => say.fuelWindow(fuel, readings, least.toFixed(1), most.toFixed(1))),
  );
  if (inside.length === 1) return { kind: 'fuels', unit, rows, words: repeated(inside[0].fuel, rows.length), evidence };
  const fuels = new Set(inside.map(({ fuel }) => fuel));
  const named = Array.from(rows, (row, i) => [row, fuelOf(implied[i])] as const)
    .filter(([, fuel]) => fuels.has(fuel))
    .sort(([a], [b]) => a - b);
  return { kind: 'fuels', unit, rows: named.map(([row]) => row), words: named.map(([, fuel]) => fuel), evidence };
}

function insideOf([fuel, from, to]: (typeof WINDOWS)[number], implied: Float64Array, count: number): Inside {
  let [readings, least, most] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < count; i++) {
    const max = implied[i];
    if (!(max >= from && max <= to)) continue;
    readings++;
    if (max < least) least = max;
    if (max > most) most = max;
  }
  return { fuel, readings, least, most };
}

function countKnown(implied: Float64Array, count: number): number {
  let known = 0;
  for (let i = 0; i < count; i++) if (!Number.isNaN(implied[i])) known++;
  return known;
}

const fuelOf = (max: number): string => WINDOWS.find(([, from, to]) => max >= from && max <= to)?.[0] ?? '';
