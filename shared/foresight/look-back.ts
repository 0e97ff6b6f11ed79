import { atOnce, type Pieces } from '../pieces.ts';
import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { normalCdf } from '../statistics/normal.ts';
import { straightLine } from '../statistics/straight-line.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import { type DriftTables, readDrift } from './drift-readings.ts';
import type { SearchStart } from './estimate-spread.ts';
import { fittingDrift } from './fit-drift.ts';
import type { FittedDrift } from './fitted-drift.ts';
import { type DriftRow, type JudgeOptions, judgeDrift } from './judge-drift.ts';
import { type LaneHistory, laneHistories, laneKey } from './lane-history.ts';
import type { LaneName } from './lane-name.ts';
import { levelAt } from './leaving-chance.ts';
import { eventDays, NEW_SERIES_EVENTS } from './series-breaks.ts';

/**
 * What was said of a lane on a past day, and what the next visit then found, less the bias that was known of its analyzer
 * on the day; in the lane's quantity.
 */
export interface Forecast extends LaneName {
  readonly saidOn: number;
  readonly foundOn: number;
  readonly found: number;
  readonly foundOutside: boolean;
  /** Reading expected at that visit, with its standard deviation. */
  readonly expected: number;
  readonly expectedSd: number;
  /** Chance that the reading would be outside. */
  readonly chance: number;
  /** The same by the plain baselines: the last reading alone, a line through the lane's own readings. */
  readonly chanceByLast: number;
  readonly chanceByLine: number;
  /** Chance of having left by the horizon, by which the lane was raised or not. */
  readonly outBy: number;
  /** Whether this is the first forecast since the lane's last visit. */
  readonly isFirst: boolean;
}

export interface LookBackOptions extends JudgeOptions {
  readonly seed: number;
  readonly referenceAir: boolean;
}

/** Units in the sample of each fit: a row of fits is worth less patience than the one that is shown. */
const SAMPLE = 150;

/** Holds the notebook as it would have been on past days against what was found afterwards. */
export class LookBack {
  readonly #tables: DriftTables & { readonly limits: DriftTables['limits'] };
  readonly #options: LookBackOptions;
  readonly #histories: ReadonlyMap<string, LaneHistory>;
  readonly #said = new Set<string>();
  readonly #changes: ReadonlyMap<string, readonly number[]>;
  #start: SearchStart | undefined;

  constructor(tables: DriftTables, asOf: number, options: LookBackOptions) {
    this.#tables = tables;
    this.#options = options;
    this.#changes = eventDays(tables.events, NEW_SERIES_EVENTS, asOf);
    this.#histories = laneHistories(readDrift(tables, asOf, options.referenceAir));
  }

  /** Forecasts of one past day: fitted on what had been read by then, hyperparameters included. */
  on(day: number): Forecast[] {
    return atOnce(this.sayingOn(day));
  }

  /** The same, by pieces. */
  *sayingOn(day: number): Pieces<Forecast[]> {
    const { seed, referenceAir } = this.#options;
    const fitted = yield* fittingDrift(this.#tables, {
      asOf: day,
      seed,
      referenceAir,
      sample: SAMPLE,
      start: this.#start,
      paths: false,
    });
    this.#start = fitted.estimate;
    const rows = judgeDrift(fitted, this.#tables, { ...this.#options, dates: false });
    yield;
    const biases = knownBiases(fitted);
    return rows.flatMap((row) => this.#forecast(row, fitted, day, biases) ?? []);
  }

  #forecast(
    row: DriftRow,
    fitted: FittedDrift,
    saidOn: number,
    biases: ReadonlyMap<string, Bias>,
  ): Forecast | undefined {
    const history = this.#histories.get(laneKey(row));
    if (!history || row.lane < 0 || !Number.isFinite(row.judged.outBy)) return undefined;
    const next = history.foundDays.findIndex((day) => day >= saidOn + 1);
    if (next < 0) return undefined;
    const { lower, upper } = row.band;
    const foundOn = history.foundDays[next];
    // Other hardware was fitted in between: what was said was said of something else.
    if (this.#changes.get(row.unit)?.some((day) => day > saidOn && day <= foundOn)) return undefined;
    const { spread } = fitted.estimate;
    const bias = biases.get(history.foundBy[next]) ?? { o2: 0, sd: spread.analyzer };
    const found = row.fromO2(history.foundO2[next] - bias.o2);
    const { mean, sd } = levelAt(row.state, (foundOn - fitted.series.to[row.lane]) / DAYS_PER_YEAR);
    const scale = Math.abs(row.fromO2(1) - row.fromO2(0));
    const expectedSd = rootSumSquares(sd, rootSumSquares(spread.reading, spread.visit, spread.zone, bias.sd) * scale);
    const key = `${laneKey(row)}\u0000${foundOn}`;
    const isFirst = !this.#said.has(key);
    this.#said.add(key);
    const outside = (expected: number, deviation: number): number =>
      chanceOutside(expected, deviation, Number.isFinite(lower) ? lower : -1e9, Number.isFinite(upper) ? upper : 1e9);
    const plain = baselines(history, saidOn, foundOn, row.fromO2, scale);
    return {
      unit: row.unit,
      fuel: row.fuel,
      fire: row.fire,
      saidOn,
      foundOn,
      found,
      foundOutside: found < lower || found > upper,
      expected: mean,
      expectedSd,
      chance: outside(mean, expectedSd),
      chanceByLast: outside(plain.last, plain.lastSd),
      chanceByLine: outside(plain.line, plain.lineSd),
      outBy: row.judged.outBy,
      isFirst,
    };
  }
}

interface Bias {
  readonly o2: number;
  readonly sd: number;
}

/** Biases of the analyzers as the fit of the day knew them, in O2 points. */
function knownBiases({ tables }: FittedDrift): Map<string, Bias> {
  const table = tables['analyzers'];
  const [name, o2, sd] = [
    textsOf(table, 'analyzer'),
    numbersOf(table, 'o2_bias_pct'),
    numbersOf(table, 'o2_bias_pct_sd'),
  ];
  const rows = Array.from({ length: table.rows }, (_, row) => row).filter((row) => Number.isFinite(o2[row]));
  return new Map(rows.map((row) => [textAt(name, row), { o2: o2[row], sd: sd[row] }]));
}

const chanceOutside = (mean: number, sd: number, lower: number, upper: number): number =>
  normalCdf((lower - mean) / sd) + normalCdf((mean - upper) / sd);

/** Spread of a plain forecast where a lane's own readings do not tell one, in O2 points. */
const PLAIN_SD_O2 = 0.4;

interface Plain {
  readonly last: number;
  readonly lastSd: number;
  readonly line: number;
  readonly lineSd: number;
}

/** The last reading before a day, and a straight line through all as-found readings before it, carried on to another day. */
function baselines(
  { foundDays, foundO2, days, o2 }: LaneHistory,
  saidOn: number,
  foundOn: number,
  fromO2: (o2: number) => number,
  scale: number,
): Plain {
  const known = days.findLastIndex((day) => day < saidOn + 1);
  const last = fromO2(o2[known]);
  const usual = PLAIN_SD_O2 * scale;
  const count = foundDays.findIndex((day) => day >= saidOn + 1);
  if (count < 3) return { last, lastSd: usual, line: last, lineSd: usual };
  const years = foundDays.slice(0, count).map((day) => (day - foundOn) / DAYS_PER_YEAR);
  const values = foundO2.slice(0, count).map((value) => fromO2(value));
  const mean = (of: readonly number[]): number => of.reduce((sum, value) => sum + value, 0) / count;
  const middle = mean(years);
  const about = years.reduce((sum, year) => sum + (year - middle) ** 2, 0);
  if (!(about > 0)) return { last, lastSd: usual, line: last, lineSd: usual };
  const { slope, residuals, freedom } = straightLine(years, values);
  const residualSd = Math.sqrt(residuals.reduce((sum, residual) => sum + residual * residual, 0) / freedom);
  const spread = Math.max(0.25 * usual, residualSd);
  const lineError = residualSd * Math.sqrt(1 / count + (middle * middle) / about);
  return { last, lastSd: usual, line: mean(values) - slope * middle, lineSd: rootSumSquares(spread, lineError) };
}

/** Math.hypot may differ in the last bit from one engine to the next; a square root may not. */
const rootSumSquares = (...values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
