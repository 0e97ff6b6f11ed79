import { analyzersSchema } from '../schemas/drift.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { tableOf } from '../table/schema.ts';
import type { Column, Table } from '../table/table.ts';
import type { AnalyzerInterval } from './analyzer-intervals.ts';
import { apparentDrift } from './apparent-drift.ts';
import { co2PerO2 } from './co2-line.ts';
import type { DriftReadings } from './drift-readings.ts';
import type { FleetFit } from './fit-model.ts';
import { columnsOf } from './fleet-program.ts';
import { wholeAnalyzer } from './split-analyzers.ts';

interface Bias {
  readonly value: Float64Array;
  readonly sd: Float64Array;
}

/**
 * One row an analyzer, sorted by name: readings taken, units read, and its bias in O2 and measured CO2; of one that came to
 * read otherwise the bias since.
 * @param intervals of these readings and this fit
 */
export function tableOfAnalyzers(read: DriftReadings, fit: FleetFit, intervals: readonly AnalyzerInterval[]): Table {
  const { fleet, analyzers, splits = [] } = read;
  const { spread } = fit.estimate;
  const count = countReadings(read, fit.written.used);
  const first = biases(fit, 0, count.first);
  const second = biases(fit, fleet.analyzers, count.second);
  const co2 = co2PerO2({ co2maxPct: read.co2max[0] ?? Number.NaN, offsetO2: 0 });
  const whole = analyzers.length - splits.length;
  const later = new Map(splits.map(({ of, on }, i) => [of, { on, code: whole + i }]));
  const wholeOf = wholeAnalyzer(read);
  const apparent = apparentDrift(
    whole,
    splits.length === 0
      ? intervals
      : intervals.map((one) => ({ ...one, before: wholeOf(one.before), after: wholeOf(one.after) })),
    (analyzer, day) => {
      const split = later.get(analyzer);
      return first.value[split && day >= split.on ? split.code : analyzer];
    },
  );
  const order = Array.from({ length: whole }, (_, i) => i)
    .filter((i) => count.readings[i] > 0)
    .sort((a, b) => (analyzers[a] < analyzers[b] ? -1 : 1));
  const pick = (values: ArrayLike<number>, factor = 1): Float64Array =>
    Float64Array.from(order, (i) => values[i] * factor);
  const now = (values: ArrayLike<number>, factor = 1): Float64Array =>
    Float64Array.from(order, (i) => values[later.get(i)?.code ?? i] * factor);
  const changed = (of: (analyzer: number, code: number, on: number) => number): Float64Array =>
    Float64Array.from(order, (i) => {
      const split = later.get(i);
      return split ? of(i, split.code, split.on) : Number.NaN;
    });
  const number = (unit: string, values: Float64Array): Column => numberColumn(unit, values);
  return tableOf(
    analyzersSchema,
    order.length,
    new Map<string, Column>([
      ['analyzer', textColumn(order.map((i) => analyzers[i]))],
      ['readings', number('1', pick(count.readings))],
      ['units', number('1', pick(count.units))],
      ['read_from', { kind: 'date', values: pick(count.from) }],
      ['compared', number('1', pick(changesOfHands(read, fit.written.used)))],
      ['o2_bias_pct', number('%', now(first.value))],
      ['o2_bias_pct_sd', number('%', now(first.sd))],
      ['co2_bias_pct', number('%', now(second.value, co2))],
      ['co2_bias_pct_sd', number('%', now(second.sd, -co2))],
      ['o2_prior_sd', number('%', new Float64Array(order.length).fill(spread.analyzer))],
      ['co2_prior_sd', number('%', new Float64Array(order.length).fill(-co2 * spread.secondAnalyzer))],
      ['changed_on', { kind: 'date', values: changed((_, __, on) => on) }],
      [
        'o2_bias_before_pct',
        number(
          '%',
          changed((analyzer) => first.value[analyzer]),
        ),
      ],
      [
        'o2_bias_since_pct',
        number(
          '%',
          changed((_, code) => first.value[code]),
        ),
      ],
      [
        'o2_bias_since_pct_sd',
        number(
          '%',
          changed((_, code) => first.sd[code]),
        ),
      ],
      ['apparent_change_pct', number('%', pick(apparent.map(({ change }) => change)))],
      ['change_by_bias_pct', number('%', pick(apparent.map(({ byBias }) => byBias)))],
      ['drift_share', number('1', pick(apparent.map(({ share }) => share)))],
    ]),
  );
}

interface Counts {
  readonly readings: Float64Array;
  readonly units: Float64Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
  /** Day of the first reading taken. */
  readonly from: Float64Array;
}

/** Of analyzers told as two: readings, units and first day of the whole, readings of O2 and CO2 of each part. */
function countReadings(read: DriftReadings, used: Uint8Array): Counts {
  const { fleet } = read;
  const wholeOf = wholeAnalyzer(read);
  const column = (): Float64Array => new Float64Array(fleet.analyzers);
  const counts: Counts = {
    readings: column(),
    units: column(),
    first: column(),
    second: column(),
    from: column().fill(Number.NaN),
  };
  const lastUnit = new Int32Array(fleet.analyzers).fill(-1);
  for (let row = 0; row < fleet.rows; row++) {
    const part = fleet.analyzer[row];
    if (part < 0 || used[row] === 0) continue;
    const analyzer = wholeOf(part);
    counts.readings[analyzer]++;
    if (!(counts.from[analyzer] <= fleet.day[row])) counts.from[analyzer] = Math.floor(fleet.day[row]);
    if (Number.isFinite(fleet.first[row])) counts.first[part]++;
    if (Number.isFinite(fleet.second[row])) counts.second[part]++;
    if (lastUnit[analyzer] !== fleet.unit[row]) counts.units[analyzer]++;
    lastUnit[analyzer] = fleet.unit[row];
  }
  return counts;
}

/**
 * Biases less their mean, weighted by readings: a bias that all analyzers share cannot be told from the burners'
 * own level. The standard deviation is that of the difference. NaN for an analyzer without such readings, and where it alone
 * has any: there is no other to differ from.
 */
function biases({ effects, written }: FleetFit, from: number, weights: Float64Array): Bias {
  const total = columnsOf(written.program.shared);
  const n = weights.length;
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const share = weights.map((weight) => (all > 0 ? weight / all : 0));
  const covariance = (i: number, j: number): number => effects.covariance[(from + i) * total + from + j];
  const mean = share.reduce((sum, weight, i) => sum + weight * effects.values[from + i], 0);
  const withMean = share.map((_, i) => share.reduce((sum, weight, j) => sum + weight * covariance(i, j), 0));
  const meanVariance = share.reduce((sum, weight, i) => sum + weight * withMean[i], 0);
  const value = new Float64Array(n).fill(Number.NaN);
  const sd = new Float64Array(n).fill(Number.NaN);
  for (let i = 0; i < n; i++) {
    if (weights[i] === 0 || weights[i] === all) continue;
    value[i] = effects.values[from + i] - mean;
    sd[i] = Math.sqrt(Math.max(0, covariance(i, i) - 2 * withMean[i] + meanVariance));
  }
  return { value, sd };
}

/** Per analyzer: how often a lane passed from it to another or from another to it, from one reading taken to the next. */
function changesOfHands(read: DriftReadings, used: Uint8Array): Float64Array {
  const { fleet } = read;
  const wholeOf = wholeAnalyzer(read);
  const changes = new Float64Array(fleet.analyzers);
  const last = new Int32Array(fleet.lanes.count).fill(-1);
  for (let row = 0; row < fleet.rows; row++) {
    const analyzer = wholeOf(fleet.analyzer[row]);
    if (analyzer < 0 || used[row] === 0) continue;
    const before = last[fleet.lane[row]];
    if (before >= 0 && before !== analyzer) {
      changes[before]++;
      changes[analyzer]++;
    }
    last[fleet.lane[row]] = analyzer;
  }
  return changes;
}
