import { numbersOf } from '../../shared/table/columns.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';
import type { RegisterRows } from './register-rows.ts';
import { AMBIGUOUS, ASSUMED, type ResolvedRows, UNREGISTERED } from './resolve-fuels.ts';
import { ATMOSPHERE_KPA, SEA_LEVEL_KPA } from './sources-of.ts';

/** Codes in the order in which they stand in a row's flags. */
export const FLAGS = [
  'fuel_assumed',
  'fuel_ambiguous',
  'fuel_unknown',
  'unit_not_registered',
  'air_assumed',
  'air_impossible',
  'barometer_impossible',
  'altitude_missing',
  'season_not_removed',
  'o2_impossible',
  'o2_zero',
  'o2_very_high',
  'co2_impossible',
  'o2_and_co2_disagree',
  'flue_below_air',
  'flue_impossible',
  'co_impossible',
  'nox_impossible',
  'co_over_range',
  'co_given_air_free',
  'condensing',
  'rich_at_reference',
  'running_above_static',
] as const;
export type Flag = (typeof FLAGS)[number];

const BIT = Object.fromEntries(FLAGS.map((flag, i) => [flag, 2 ** i])) as Readonly<Record<Flag, number>>;

/** Above this O2, air-free CO multiplies the reading by more than three and a half. */
const HIGH_O2_PCT = 15;
/** What the relations take: see within(...) in them. */
const AIR_C = [-50, 100] as const;
const FLUE_C = [-50, 1200] as const;
const MOST_PPM = 1_000_000;
const outside = (value: number, [least, most]: readonly [number, number]): boolean => value < least || value > most;
/** O2 and CO2 are doubted where their misfit is beyond three standard uncertainties and this many points. */
const MISFIT_PCT = 0.5;

/** Values of the current block that flags look at, as the evaluator leaves them. */
export interface FlagWindow {
  readonly misfit: Float64Array;
  readonly misfitSd: Float64Array;
  readonly vapor: Float64Array;
  readonly water: Float64Array;
}

/** Collects a mask of flags for each reading, block by block, and turns them into a column of text. */
export class FlagColumn {
  readonly #codes: Int32Array;
  readonly #levels: string[] = [];
  readonly #known = new Map<number, number>();
  readonly #counts = new Map<Flag, number>();
  readonly #masks: number[] = [];

  constructor(
    private readonly readings: Table,
    private readonly register: RegisterRows,
    private readonly resolved: ResolvedRows,
  ) {
    this.#codes = new Int32Array(readings.rows);
  }

  /** `derived(name)` is the finished column of derived, of which rows from..to are filled. */
  block(from: number, to: number, window: FlagWindow, derived: (name: string) => Float64Array): void {
    const read = (name: string): Float64Array => numbersOf(this.readings, name);
    const [o2, co2, flue, air, barometer] = ['o2_pct', 'co2_pct', 'flue_C', 'air_C', 'barometer_kPa'].map(read);
    const [co, coAirFree, nox, wet] = ['co_ppm', 'co_air_free_ppm', 'nox_ppm', 'o2_wet_pct'].map(read);
    const bounds = (name: string): Int8Array | undefined => {
      const column = this.readings.columns.get(name);
      return column?.kind === 'number' ? column.bounds : undefined;
    };
    const coBounds = [bounds('co_ppm'), bounds('co_air_free_ppm')];
    const [derivedO2, efficiency, drop, reference] = [
      'o2_pct',
      'efficiency_gross_pct',
      'supply_drop_Pa',
      'o2_reference_pct',
    ].map(derived);
    for (let row = from; row < to; row++) {
      const i = row - from;
      let mask = this.#given(row);
      const missing = Number.isNaN(air[row]);
      if (missing && !Number.isNaN(flue[row])) mask += BIT.air_assumed;
      if (outside(air[row], AIR_C)) mask += BIT.air_impossible;
      if (outside(barometer[row], ATMOSPHERE_KPA)) mask += BIT.barometer_impossible;
      else if (outside(barometer[row], SEA_LEVEL_KPA)) mask += this.#altitude(row);
      if (o2[row] < 0 || o2[row] >= 20.9 || wet[row] < 0 || wet[row] >= 20) mask += BIT.o2_impossible;
      else if (o2[row] === 0) mask += BIT.o2_zero;
      if (derivedO2[row] > HIGH_O2_PCT) mask += BIT.o2_very_high;
      const co2max = this.resolved.properties[this.resolved.fuel.codes[row]]?.co2maxPct ?? Number.NaN;
      if (co2[row] < 0 || co2[row] > co2max) mask += BIT.co2_impossible;
      const misfit = Math.abs(window.misfit[i]);
      if (misfit > MISFIT_PCT && misfit > 3 * window.misfitSd[i]) mask += BIT.o2_and_co2_disagree;
      if (!missing && flue[row] < air[row]) mask += BIT.flue_below_air;
      if (outside(flue[row], FLUE_C)) mask += BIT.flue_impossible;
      if (outside(co[row], [0, MOST_PPM]) || outside(coAirFree[row], [0, MOST_PPM])) mask += BIT.co_impossible;
      if (outside(nox[row], [0, MOST_PPM])) mask += BIT.nox_impossible;
      if (coBounds[0]?.[row] === 1 || coBounds[1]?.[row] === 1) mask += BIT.co_over_range;
      if (Number.isNaN(co[row]) && !Number.isNaN(coAirFree[row])) mask += BIT.co_given_air_free;
      if (window.vapor[i] < window.water[i] && !Number.isNaN(efficiency[row])) mask += BIT.condensing;
      if (reference[row] < 0) mask += BIT.rich_at_reference;
      if (drop[row] < 0) mask += BIT.running_above_static;
      this.#codes[row] = this.#code(mask);
    }
  }

  /** What was already known of the row: its fuel and its burner. */
  #given(row: number): number {
    const { marks, properties, fuel, registerRow } = this.resolved;
    let mask = 0;
    if (marks[row] & ASSUMED) mask += BIT.fuel_assumed;
    if (marks[row] & AMBIGUOUS) mask += BIT.fuel_ambiguous;
    if (marks[row] & UNREGISTERED) mask += BIT.unit_not_registered;
    if (!properties[fuel.codes[row]]) mask += BIT.fuel_unknown;
    const at = registerRow[row];
    const behavior = at < 0 ? 'unknown' : this.register.behaviors[at];
    const { temperature } = at < 0 ? this.register.unregistered : this.register.exponents[at];
    const corrected = temperature !== 0;
    if (!corrected && (behavior === 'unknown' || behavior === 'atmospheric')) mask += BIT.season_not_removed;
    return mask;
  }

  #altitude(row: number): number {
    const registered = this.resolved.registerRow[row];
    const known = registered >= 0 && !Number.isNaN(this.register.sitePressurePa[registered]);
    return known ? 0 : BIT.altitude_missing;
  }

  #code(mask: number): number {
    if (mask === 0) return -1;
    let code = this.#known.get(mask);
    if (code === undefined) {
      code = this.#levels.push(FLAGS.filter((flag) => mask & BIT[flag]).join(' ')) - 1;
      this.#known.set(mask, code);
      this.#masks.push(0);
    }
    this.#masks[code]++;
    return code;
  }

  column(): TextColumn {
    return { kind: 'text', codes: this.#codes, levels: this.#levels };
  }

  /** Readings that carry each flag, most first. */
  counts(): readonly (readonly [Flag, number])[] {
    this.#levels.forEach((level, code) => {
      for (const flag of level.split(' ') as Flag[])
        this.#counts.set(flag, (this.#counts.get(flag) ?? 0) + this.#masks[code]);
    });
    return [...this.#counts].sort((a, b) => b[1] - a[1]);
  }
}
