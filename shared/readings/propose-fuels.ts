import { impliedCo2maxPct } from '../combustion/flue-gas.ts';
import * as say from '../messages/import.ts';
import { type Naming, tallyOf, unitRuns } from './naming.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

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
  const { numbers, texts } = columns;
  if (numbers.get('o2_pct')?.values.length === 0 || numbers.get('co2_pct')?.values.length === 0) return [];
  const seen = new WindowsSeen(columns);
  const namings: Naming[] = [];
  for (const [unit, rows] of unitRuns(columns, order)) {
    const naming = known.has(unit) ? undefined : seen.naming(unit, texts.get('unit')!.code(rows[0]), rows);
    if (naming) namings.push(naming);
  }
  return namings;
}

/** How often the readings of each unit that name no fuel fell into which window, counted in one pass in the order of the files. */
class WindowsSeen {
  readonly #columns: ReadingColumns;
  /** By unit: readings without a fuel, the first of them, and those of which O2 and CO2 say anything. */
  readonly #open: Int32Array;
  readonly #firstRow: Int32Array;
  readonly #telling: Int32Array;
  /** By unit and window: readings inside, and their least and highest CO2max. */
  readonly #inside: Int32Array;
  readonly #least: Float64Array;
  readonly #most: Float64Array;

  constructor(columns: ReadingColumns) {
    this.#columns = columns;
    const units = columns.texts.get('unit')?.levels.length ?? 0;
    [this.#open, this.#firstRow, this.#telling] = [0, 1, 2].map(() => new Int32Array(units));
    this.#inside = new Int32Array(units * WINDOWS.length);
    this.#least = new Float64Array(units * WINDOWS.length).fill(Number.POSITIVE_INFINITY);
    this.#most = new Float64Array(units * WINDOWS.length).fill(Number.NEGATIVE_INFINITY);
    this.#count(columns.texts.get('unit')?.codes ?? new Int32Array(0));
  }

  #count(units: Int32Array): void {
    const { status, rows } = this.#columns;
    for (let row = 0; row < rows; row++) {
      if (status[row] !== ROW.accepted || !this.#isOpen(row)) continue;
      const unit = units[row];
      if (this.#open[unit]++ === 0) this.#firstRow[unit] = row;
      const max = this.#implied(row);
      if (Number.isNaN(max)) continue;
      this.#telling[unit]++;
      const window = windowOf(max);
      if (window < 0) continue;
      const at = unit * WINDOWS.length + window;
      this.#inside[at]++;
      if (max < this.#least[at]) this.#least[at] = max;
      if (max > this.#most[at]) this.#most[at] = max;
    }
  }

  #isOpen(row: number): boolean {
    const fuel = this.#columns.texts.get('fuel');
    return fuel === undefined || fuel.code(row) < 0;
  }

  /** CO2max that a row implies, %; NaN where it says nothing. */
  #implied(row: number): number {
    const { numbers } = this.#columns;
    const o2Pct = numbers.get('o2_pct')!.get(row);
    const co2Pct = numbers.get('co2_pct')!.get(row);
    return o2Pct < HIGHEST_O2_PCT && co2Pct > 0 ? impliedCo2maxPct(o2Pct, co2Pct) : Number.NaN;
  }

  /** What is proposed for a unit, by its code; `rows` are its readings. */
  naming(unit: string, code: number, rows: Int32Array): Naming | undefined {
    const inside = WINDOWS.flatMap(([fuel], window) => {
      const at = code * WINDOWS.length + window;
      const readings = this.#inside[at];
      return readings < LEAST_READINGS ? [] : [{ fuel, window, at, readings }];
    });
    const covered = inside.reduce((sum, { readings }) => sum + readings, 0);
    if (inside.length === 0 || covered < (1 - STRAY_SHARE) * this.#telling[code]) return undefined;
    const told = inside.map(({ fuel, at, readings }) =>
      say.fuelWindow(fuel, readings, this.#least[at].toFixed(1), this.#most[at].toFixed(1)),
    );
    const base = { kind: 'fuels' as const, unit, evidence: say.fuelEvidence(told) };
    const open = (): number[] => Array.from(rows).filter((row) => this.#isOpen(row));
    if (inside.length === 1) {
      const [{ fuel }] = inside;
      const readings = this.#open[code];
      const wouldBe = tallyOf(new Map([[fuel, readings]]));
      const eachRow: Naming['eachRow'] = (write) => {
        for (const row of open()) write(row, fuel);
      };
      return { ...base, readings, wouldBe, firstRow: this.#firstRow[code], eachRow };
    }
    const fuels = new Map(inside.map(({ fuel, window }) => [window, fuel]));
    const named = open()
      .map((row) => ({ row, fuel: fuels.get(windowOf(this.#implied(row))) ?? '' }))
      .filter(({ fuel }) => fuel !== '')
      .sort((a, b) => a.row - b.row);
    return {
      ...base,
      readings: named.length,
      wouldBe: tallyOf(new Map(inside.map(({ fuel, readings }) => [fuel, readings]))),
      firstRow: named[0].row,
      eachRow: (write) => {
        for (const { row, fuel } of named) write(row, fuel);
      },
    };
  }
}

/** Place of the window that a CO2max lies in; -1 for none. */
function windowOf(max: number): number {
  for (let window = 0; window < WINDOWS.length; window++)
    if (max >= WINDOWS[window][1] && max <= WINDOWS[window][2]) return window;
  return -1;
}
