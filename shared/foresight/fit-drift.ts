import { atOnce, type Pieces } from '../pieces.ts';
import { describeLanes } from './describe-lanes.ts';
import { type DriftReadings, type DriftTables, readingDrift } from './drift-readings.ts';
import type { SpreadEstimate } from './estimate-spread.ts';
import { fittingModel } from './fit-model.ts';
import type { FittedDrift, OtherAir } from './fitted-drift.ts';
import { tracePasses } from './fleet-passes.ts';
import { grossReadings } from './gross-readings.ts';
import { DRIFT_PRIOR, type Spread } from './spread.ts';
import { tableOfAnalyzers } from './table-of-analyzers.ts';
import { tableOfGasMonths } from './table-of-gas-months.ts';
import type { LaneTrace } from './trace-lanes.ts';

/** Units in the seeded sample from which the hyperparameters are estimated. */
const SAMPLE = 400;

/** In larger fleets the other air is left out: it would cost a fifth of the time to say what a thousand units have said. */
const MOST_UNITS_IN_BOTH_AIRS = 1000;

export interface FitDriftOptions {
  readonly asOf: number;
  readonly seed: number;
  readonly referenceAir: boolean;
  /** Units in the sample for the hyperparameters. */
  readonly sample?: number;
  /** Where their search starts: the last fit's, in a row of fits. */
  readonly start?: Spread | undefined;
  /** False where only levels and rates are wanted: neither smoothed paths nor the fit in the other air. */
  readonly paths?: boolean;
}

const NO_TRACE: LaneTrace = {
  lane: new Int32Array(0),
  day: new Float64Array(0),
  level: new Float64Array(0),
  sd: new Float64Array(0),
  starts: new Int32Array(0),
};

/** The fit of the whole fleet: everything that a changed band or horizon does not touch. */
export function fitDrift(tables: DriftTables, options: FitDriftOptions): FittedDrift {
  return atOnce(fittingDrift(tables, options));
}

/** The same, by pieces. */
export function* fittingDrift(tables: DriftTables, options: FitDriftOptions): Pieces<FittedDrift> {
  const { asOf, seed, referenceAir, sample = SAMPLE, start, paths = true } = options;
  const all = yield* readingDrift(tables, asOf, referenceAir);
  yield;
  const read = withoutGross(all);
  yield;
  const { fit, passes } = yield* fittingModel(read.fleet, { prior: DRIFT_PRIOR, sample, seed, start });
  const { written, estimate, effects, states } = fit;
  const trace = paths ? yield* tracePasses(passes, estimate.spread, effects) : NO_TRACE;
  const analyzers = tableOfAnalyzers(read, fit);
  yield;
  const both = paths && all.fleet.units <= MOST_UNITS_IN_BOTH_AIRS;
  const other = both ? yield* fittingOtherAir(tables, options, all, estimate) : undefined;
  return {
    tables: { analyzers, 'gas-months': tableOfGasMonths(read, fit) },
    lanes: describeLanes(read, fit, tables),
    states,
    series: written.series,
    estimate,
    trace,
    readings: { lane: read.fleet.lane, sourceRow: read.sourceRow, used: written.used },
    gross: read.gross?.reduce((sum, mark) => sum + mark, 0) ?? 0,
    gasMonths: written.months.codes.length,
    other,
    referenceAir,
    asOf,
  };
}

/**
 * The same lanes in the air that the fit is not made in, with its hyperparameters, so that the air alone makes the difference;
 * undefined where no reading differs between the two.
 */
function* fittingOtherAir(
  tables: DriftTables,
  { asOf, seed, referenceAir }: FitDriftOptions,
  { fleet }: DriftReadings,
  known: SpreadEstimate,
): Pieces<OtherAir | undefined> {
  const all = yield* readingDrift(tables, asOf, !referenceAir);
  const differs = (a: Float64Array, b: Float64Array): boolean =>
    a.some((value, row) => Math.abs(value - b[row]) > LEAST_DIFFERENCE);
  if (!differs(fleet.first, all.fleet.first) && !differs(fleet.second, all.fleet.second)) return undefined;
  yield;
  const read = withoutGross(all);
  const blind = { ...read.fleet, zoneMonths: 0, zoneMonth: read.fleet.zoneMonth.map(() => -1) };
  yield;
  const estimated = { ...known, spread: { ...known.spread, zone: 0 } };
  const { fit } = yield* fittingModel(blind, { prior: DRIFT_PRIOR, sample: SAMPLE, seed, known: estimated });
  const { written, estimate, states } = fit;
  return { lanes: describeLanes(read, fit, tables), states, series: written.series, estimate };
}

/** A hundredth of a point: what an instrument does not show. */
const LEAST_DIFFERENCE = 0.01;

/** Gross readings keep their place and lose their number. */
function withoutGross(read: DriftReadings): DriftReadings {
  const gross = grossReadings(read.fleet);
  const kept = (values: Float64Array): Float64Array =>
    values.map((value, row) => (gross[row] === 1 ? Number.NaN : value));
  return { ...read, fleet: { ...read.fleet, first: kept(read.fleet.first), second: kept(read.fleet.second) }, gross };
}
