import { impliedCo2maxPct } from '../combustion/flue-gas.ts';
import * as say from '../messages/import.ts';
import { type Naming, namingOf, tallyOf, unitRuns } from './naming.ts';
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
  readonly #fuels: Int32Array;
  readonly #o2: Float64Array;
  readonly #co2: Float64Array;
  /** By unit: readings without a fuel, the first of them, and those of which O2 and CO2 say anything. */
  readonly #open: Int32Array;
  readonly #firstRow: Int32Array;
  readonly #telling: Int32Array;
  /** By unit and window: readings inside, and their least and highest CO2max. */
  readonly #inside: Int32Array;
  readonly #least: Float64Array;
  readonly #most: Float64Array;
  readonly #tallies = new Map<string, string>();

  constructor(columns: ReadingColumns) {
    const { numbers, texts } = columns;
    this.#fuels = texts.get('fuel')?.codes ?? new Int32Array(0);
    [this.#o2, this.#co2] = ['o2_pct', 'co2_pct'].map((name) => numbers.get(name)?.values ?? new Float64Array(0));
    const units = texts.get('unit')?.levels.length ?? 0;
    [this.#open, this.#firstRow, this.#telling] = [0, 1, 2].map(() => new Int32Array(units));
    this.#inside = new Int32Array(units * WINDOWS.length);
    this.#least = new Float64Array(units * WINDOWS.length).fill(Number.POSITIVE_INFINITY);
    this.#most = new Float64Array(units * WINDOWS.length).fill(Number.NEGATIVE_INFINITY);
    this.#count(columns, texts.get('unit')?.codes ?? new Int32Array(0));
  }

  #count({ status, rows }: ReadingColumns, units: Int32Array): void {
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
    return row >= this.#fuels.length || this.#fuels[row] < 0;
  }

  /** CO2max that a row implies, %; NaN where it says nothing. */
  #implied(row: number): number {
    const [o2Pct, co2Pct] = [this.#o2[row], this.#co2[row]];
    return o2Pct < HIGHEST_O2_PCT && co2Pct > 0 ? impliedCo2maxPct(o2Pct, co2Pct) : Number.NaN;
  }

  /** The fuel whose window, one of those that the unit keeps to, holds a row; '' for none. */
  #fuelOf(row: number, code: number): string {
    const window = windowOf(this.#implied(row));
    return window >= 0 && this.#inside[code * WINDOWS.length + window] >= LEAST_READINGS ? WINDOWS[window][0] : '';
  }

  /** What is proposed for a unit, by its code; `rows` are its readings. There can be tens of thousands of units. */
  naming(unit: string, code: number, rows: Int32Array): Naming | undefined {
    const base = code * WINDOWS.length;
    let [covered, fuels, only, evidence] = [0, 0, 0, ''];
    for (let window = 0; window < WINDOWS.length; window++) {
      const readings = this.#inside[base + window];
      if (readings < LEAST_READINGS) continue;
      covered += readings;
      only = window;
      const told = this.#evidence(window, base + window);
      evidence = fuels++ === 0 ? told : say.fuelEvidence([evidence, told]);
    }
    if (fuels === 0 || covered < (1 - STRAY_SHARE) * this.#telling[code]) return undefined;
    if (fuels === 1) return this.#oneFuel(unit, code, WINDOWS[only][0], rows, evidence);
    const named = Array.from(rows)
      .filter((row) => this.#isOpen(row) && this.#fuelOf(row, code) !== '')
      .sort((a, b) => a - b);
    const words = named.map((row) => this.#fuelOf(row, code));
    return namingOf('fuels', unit, named, words, evidence);
  }

  #evidence(window: number, at: number): string {
    return say.fuelWindow(WINDOWS[window][0], this.#inside[at], tenths(this.#least[at]), tenths(this.#most[at]));
  }

  /** All readings of the unit that name no fuel get the same. */
  #oneFuel(unit: string, code: number, fuel: string, rows: Int32Array, evidence: string): Naming {
    const readings = this.#open[code];
    const key = `${fuel} ${readings}`;
    const wouldBe = this.#tallies.get(key) ?? tallyOf(new Map([[fuel, readings]]));
    this.#tallies.set(key, wouldBe);
    return {
      kind: 'fuels',
      unit,
      readings,
      wouldBe,
      firstRow: this.#firstRow[code],
      evidence,
      eachRow: (write) => {
        for (const row of rows) if (this.#isOpen(row)) write(row, fuel);
      },
    };
  }
}

const TENTHS = Array.from({ length: 200 }, (_, tenth) => (tenth / 10).toFixed(1));

/** The same as toFixed(1), which is slow, of a value that is clearly nearer to one tenth than to the next. */
function tenths(value: number): string {
  const tenth = Math.round(10 * value);
  return Math.abs(10 * value - tenth) < 0.499 ? (TENTHS[tenth] ?? value.toFixed(1)) : value.toFixed(1);
}

/** Place of the window that a CO2max lies in; -1 for none. */
function windowOf(max: number): number {
  for (let window = 0; window < WINDOWS.length; window++)
    if (max >= WINDOWS[window][1] && max <= WINDOWS[window][2]) return window;
  return -1;
}
