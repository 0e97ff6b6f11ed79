import type { Pieces } from '../pieces.ts';
import { textsOf } from '../table/columns.ts';
import { takeTable } from '../table/take-table.ts';
import { filterRows } from '../table/verbs.ts';
import { describeLanes } from './describe-lanes.ts';
import { type DriftReadings, type DriftTables, readingDrift } from './drift-readings.ts';
import type { SearchStart } from './estimate-spread.ts';
import { fittingAnalyzers } from './fit-analyzers.ts';
import { fittingModel } from './fit-model.ts';
import type { FittedDrift, OtherAir } from './fitted-drift.ts';
import { tracePasses } from './fleet-passes.ts';
import { grossReadings } from './gross-readings.ts';
import { sampleUnits } from './sample-units.ts';
import { splitAnalyzers } from './split-analyzers.ts';
import { DRIFT_PRIOR } from './spread.ts';
import { tableOfAnalyzers } from './table-of-analyzers.ts';
import { tableOfGasMonths } from './table-of-gas-months.ts';
import type { LaneTrace } from './trace-lanes.ts';

/** Units in the seeded sample from which the hyperparameters are estimated. */
const SAMPLE = 400;
/** The same for the fit in the other air, which is there to be compared with. */
const OTHER_SAMPLE = 100;
/** Units that are fitted in the other air too: a thousand say what the air does as well as ten thousand. */
const UNITS_IN_BOTH_AIRS = 1000;

export interface FitDriftOptions {
  readonly asOf: number;
  readonly seed: number;
  readonly referenceAir: boolean;
  /** Units in the sample for the hyperparameters. */
  readonly sample?: number;
  /** Where their search starts: the last fit's, in a row of fits. */
  readonly start?: SearchStart | undefined;
  /** False where only levels and rates are wanted: neither smoothed paths nor the fit in the other air. */
  readonly paths?: boolean;
}

const NO_TRACE: LaneTrace = {
  lane: new Int32Array(0),
  day: new Float64Array(0),
  level: new Float64Array(0),
  sd: new Float64Array(0),
  sdWithOffset: new Float64Array(0),
  starts: new Int32Array(0),
};

/** The fit of the whole fleet: everything that a changed band or horizon does not touch. */
export function* fittingDrift(tables: DriftTables, options: FitDriftOptions): Pieces<FittedDrift> {
  const { asOf, seed, referenceAir, sample = SAMPLE, start, paths = true } = options;
  const all = yield* readingDrift(tables, asOf, referenceAir);
  yield;
  const { read, fit, passes, intervals } = yield* fittingAnalyzers(withoutGross(all), { sample, seed, start });
  const { written, estimate, effects, states, began } = fit;
  const trace = paths ? yield* tracePasses(passes, estimate.spread, effects) : NO_TRACE;
  const analyzers = tableOfAnalyzers(read, fit, intervals);
  yield;
  const other = paths
    ? yield* fittingOtherAir(tables, options, { ...all, splits: read.splits ?? [] }, estimate)
    : undefined;
  return {
    tables: { analyzers, 'gas-months': tableOfGasMonths(read, fit) },
    lanes: describeLanes(read, fit, tables),
    states,
    series: written.series,
    began,
    estimate,
    trace,
    readings: { lane: read.fleet.lane, sourceRow: read.sourceRow, used: written.used },
    gross: count(read.gross),
    sudden: count(read.fleet.sudden),
    gasMonths: written.months.codes.length,
    other,
    referenceAir,
    asOf,
  };
}

/**
 * The lanes in the air that the fit is not made in, of a large fleet those of a seeded sample of its units; undefined where no
 * reading differs between the two.
 */
function* fittingOtherAir(
  tables: DriftTables,
  { asOf, seed, referenceAir }: FitDriftOptions,
  fleet: DriftReadings,
  start: SearchStart,
): Pieces<OtherAir | undefined> {
  const some = tablesOfSample(tables, fleet, seed);
  const here = some === tables ? fleet : yield* readingDrift(some, asOf, referenceAir);
  const all = yield* readingDrift(some, asOf, !referenceAir);
  const differs = (a: Float64Array, b: Float64Array): boolean =>
    a.some((value, row) => Math.abs(value - b[row]) > LEAST_DIFFERENCE);
  if (!differs(here.fleet.first, all.fleet.first) && !differs(here.fleet.second, all.fleet.second)) return undefined;
  yield;
  const read = splitAnalyzers(withoutGross(all), fleet.splits ?? []);
  yield;
  const { fit } = yield* fittingModel(read.fleet, { prior: DRIFT_PRIOR, sample: OTHER_SAMPLE, seed, start });
  const { written, estimate, states } = fit;
  return { lanes: describeLanes(read, fit, some), states, series: written.series, estimate, units: read.fleet.units };
}

/** Readings of a seeded sample of the units, where they are many; the same tables where they are not. */
function tablesOfSample(tables: DriftTables, { fleet, lanes }: DriftReadings, seed: number): DriftTables {
  if (fleet.units <= UNITS_IN_BOTH_AIRS) return tables;
  const taken = new Set(sampleUnits(fleet.units, UNITS_IN_BOTH_AIRS, seed));
  const names = new Set(lanes.filter((_, lane) => taken.has(fleet.lanes.unit[lane])).map(({ unit }) => unit));
  const unit = textsOf(tables.derived, 'unit');
  const isTaken = unit.levels.map((name) => names.has(name));
  const rows = filterRows(tables.derived, (row) => isTaken[unit.codes[row]]);
  return { ...tables, readings: takeTable(tables.readings, rows), derived: takeTable(tables.derived, rows) };
}

/** A hundredth of a point: what an instrument does not show. */
const LEAST_DIFFERENCE = 0.01;

const count = (marks: Uint8Array | undefined): number => marks?.reduce((sum, mark) => sum + mark, 0) ?? 0;

/** Gross readings keep their place and lose their number. */
function withoutGross(read: DriftReadings): DriftReadings {
  const { gross, sudden } = grossReadings(read.fleet);
  const kept = (values: Float64Array): Float64Array =>
    values.map((value, row) => (gross[row] === 1 ? Number.NaN : value));
  return {
    ...read,
    fleet: { ...read.fleet, first: kept(read.fleet.first), second: kept(read.fleet.second), sudden },
    gross,
  };
}
