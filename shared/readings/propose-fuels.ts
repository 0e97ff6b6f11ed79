import { impliedCo2maxPct } from '../combustion/flue-gas.ts';
import * as say from '../messages/import.ts';
import { endOfRun, type Naming, namingOf, tallyOf } from './naming.ts';
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
  const units = texts.get('unit');
  if (!units) return [];
  const seen = new WindowsSeen(columns);
  const namings: Naming[] = [];
  for (let from = 0; from < order.length; ) {
    const to = endOfRun(units.codes, order, from);
    const code = units.codes[order[from]];
    const naming = known.has(units.levels[code]) ? undefined : seen.naming(units.levels[code], code, order, from, to);
    if (naming) namings.push(naming);
    from = to;
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
  /** By window: what was said already. */
  readonly #tallies = WINDOWS.map(() => new Map<number, string>());
  readonly #told = WINDOWS.map(() => new Map<number, string>());

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
    const [open, firstRow, telling] = [this.#open, this.#firstRow, this.#telling];
    const [inside, least, most] = [this.#inside, this.#least, this.#most];
    for (let row = 0; row < rows; row++) {
      if (status[row] !== ROW.accepted || !this.#isOpen(row)) continue;
      const unit = units[row];
      if (open[unit]++ === 0) firstRow[unit] = row;
      const max = this.#implied(row);
      if (Number.isNaN(max)) continue;
      telling[unit]++;
      const window = windowOf(max);
      if (window < 0) continue;
      const at = unit * WINDOWS.length + window;
      inside[at]++;
      if (max < least[at]) least[at] = max;
      if (max > most[at]) most[at] = max;
    }
  }

  #isOpen(row: number): boolean {
    return row >= this.#fuels.length || this.#fuels[row] < 0;
  }

  /** CO2max that a row implies, %; NaN where it says nothing. */
  #implied(row: number): number {
    const o2Pct = this.#o2[row];
    const co2Pct = this.#co2[row];
    return o2Pct < HIGHEST_O2_PCT && co2Pct > 0 ? impliedCo2maxPct(o2Pct, co2Pct) : Number.NaN;
  }

  /** The fuel whose window, one of those that the unit keeps to, holds a row; '' for none. */
  #fuelOf(row: number, code: number): string {
    const window = windowOf(this.#implied(row));
    return window >= 0 && this.#inside[code * WINDOWS.length + window] >= LEAST_READINGS ? WINDOWS[window][0] : '';
  }

  /** What is proposed for a unit, by its code; its readings stand in `order` from `from` to `to`. */
  naming(unit: string, code: number, order: Int32Array, from: number, to: number): Naming | undefined {
    const base = code * WINDOWS.length;
    let [covered, fuels, only] = [0, 0, 0];
    for (let window = 0; window < WINDOWS.length; window++) {
      const readings = this.#inside[base + window];
      if (readings < LEAST_READINGS) continue;
      covered += readings;
      only = window;
      fuels++;
    }
    if (fuels === 0 || covered < (1 - STRAY_SHARE) * this.#telling[code]) return undefined;
    if (fuels === 1) return this.#oneFuel(unit, code, only, order, from, to);
    const told = WINDOWS.flatMap((_, window) =>
      this.#inside[base + window] < LEAST_READINGS ? [] : [this.#evidence(base, window)],
    );
    const named = Array.from(order.subarray(from, to))
      .filter((row) => this.#isOpen(row) && this.#fuelOf(row, code) !== '')
      .sort((a, b) => a - b);
    const words = named.map((row) => this.#fuelOf(row, code));
    return namingOf('fuels', unit, named, words, say.fuelEvidence(told));
  }

  /** All readings of the unit that name no fuel get the same. */
  #oneFuel(unit: string, code: number, window: number, order: Int32Array, from: number, to: number): Naming {
    const [fuel] = WINDOWS[window];
    const readings = this.#open[code];
    let wouldBe = this.#tallies[window].get(readings);
    if (wouldBe === undefined) {
      wouldBe = tallyOf(new Map([[fuel, readings]]));
      this.#tallies[window].set(readings, wouldBe);
    }
    return {
      kind: 'fuels',
      unit,
      readings,
      wouldBe,
      firstRow: this.#firstRow[code],
      evidence: this.#evidence(code * WINDOWS.length, window),
      eachRow: (write) => {
        for (let i = from; i < to; i++) if (this.#isOpen(order[i])) write(order[i], fuel);
      },
    };
  }

  /** Units are many, and what there is to say of them little: each sentence is written once. */
  #evidence(base: number, window: number): string {
    const at = base + window;
    const [readings, least, most] = [this.#inside[at], this.#least[at], this.#most[at]];
    const told = this.#told[window];
    const key = (readings * TENTHS + tenth(least)) * TENTHS + tenth(most);
    // Half a tenth may be written up or down, by the last bit.
    const isSure = isClear(least) && isClear(most);
    const before = isSure ? told.get(key) : undefined;
    if (before !== undefined) return before;
    const sentence = say.fuelWindow(WINDOWS[window][0], readings, least.toFixed(1), most.toFixed(1));
    if (isSure) told.set(key, sentence);
    return sentence;
  }
}

/** More than any CO2max has of them. */
const TENTHS = 1000;
const tenth = (value: number): number => Math.round(10 * value);
/** Whether a value is nearer to one tenth than to the next beyond doubt. */
const isClear = (value: number): boolean => Math.abs(10 * value - tenth(value)) < 0.499;

/** Place of the window that a CO2max lies in; -1 for none. */
function windowOf(max: number): number {
  for (let window = 0; window < WINDOWS.length; window++)
    if (max >= WINDOWS[window][1] && max <= WINDOWS[window][2]) return window;
  return -1;
}
