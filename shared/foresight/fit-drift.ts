import { atOnce, type Pieces } from '../pieces.ts';
import { medianOf } from '../statistics/median-of.ts';
import { type DriftReadings, type DriftTables, readDrift } from './drift-readings.ts';
import { type FleetFit, fittingModel } from './fit-model.ts';
import type { FittedDrift, FittedLane } from './fitted-drift.ts';
import { tracePasses } from './fleet-passes.ts';
import { READING_STATE } from './fleet-readings.ts';
import { grossReadings } from './gross-readings.ts';
import { hardwareOf } from './lane-keys.ts';
import { DRIFT_PRIOR, type Spread } from './spread.ts';
import { tableOfAnalyzers } from './table-of-analyzers.ts';
import type { LaneTrace } from './trace-lanes.ts';

/** Units in the seeded sample from which the hyperparameters are estimated. */
const SAMPLE = 400;

export interface FitDriftOptions {
  readonly asOf: number;
  readonly seed: number;
  readonly referenceAir: boolean;
  /** Units in the sample for the hyperparameters. */
  readonly sample?: number;
  /** Where their search starts: the last fit's, in a row of fits. */
  readonly start?: Spread | undefined;
  /** Whether the smoothed path of every lane is wanted. */
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
  const all = readDrift(tables, asOf, referenceAir);
  yield;
  const read = withoutGross(all);
  yield;
  const { fit, passes } = yield* fittingModel(read.fleet, { prior: DRIFT_PRIOR, sample, seed, start });
  const { written, estimate, effects, states } = fit;
  const trace = paths ? yield* tracePasses(passes, estimate.spread, effects) : NO_TRACE;
  const analyzers = tableOfAnalyzers(read, fit);
  yield;
  return {
    tables: { analyzers },
    lanes: describeLanes(read, fit, tables),
    states,
    series: written.series,
    estimate,
    trace,
    readings: { lane: read.fleet.lane, sourceRow: read.sourceRow, used: written.used },
    gross: read.gross?.reduce((sum, mark) => sum + mark, 0) ?? 0,
    referenceAir,
    asOf,
  };
}

/** Gross readings keep their place and lose their number. */
function withoutGross(read: DriftReadings): DriftReadings {
  const gross = grossReadings(read.fleet);
  const kept = (values: Float64Array): Float64Array =>
    values.map((value, row) => (gross[row] === 1 ? Number.NaN : value));
  return { ...read, fleet: { ...read.fleet, first: kept(read.fleet.first), second: kept(read.fleet.second) }, gross };
}

function describeLanes(read: DriftReadings, { effects, written }: FleetFit, tables: DriftTables): FittedLane[] {
  const { analyzers, secondAnalyzers, classes } = written.program.shared;
  const hardware = hardwareOf(tables.units);
  const left = lastLeft(read, written.series.from);
  const measured = lanesWithSecond(read);
  return read.lanes.map((name, lane) => {
    const fuel = read.fleet.lanes.fuel[lane];
    const offsetO2 = measured[lane] ? effects.values[analyzers + secondAnalyzers + classes + fuel] : 0;
    const co2maxPct = read.co2max[fuel];
    return { ...name, ...hardware(name.unit, name.fuel), co2maxPct, offsetO2, leftO2: medianOf(left[lane]) };
  });
}

/** Per lane: whether its CO2 is measured. */
function lanesWithSecond({ fleet }: DriftReadings): boolean[] {
  const measured = new Array<boolean>(fleet.lanes.count).fill(false);
  for (let row = 0; row < fleet.rows; row++) if (Number.isFinite(fleet.second[row])) measured[fleet.lane[row]] = true;
  return measured;
}

/** Per lane: the last three as-left readings of the series in force, in O2 points. */
function lastLeft({ fleet }: DriftReadings, from: Float64Array): number[][] {
  const left: number[][] = Array.from({ length: fleet.lanes.count }, () => []);
  for (let row = 0; row < fleet.rows; row++) {
    const lane = fleet.lane[row];
    const value = Number.isFinite(fleet.first[row]) ? fleet.first[row] : fleet.second[row];
    if (fleet.state[row] !== READING_STATE.left || !(fleet.day[row] >= from[lane]) || !Number.isFinite(value)) continue;
    left[lane].push(value);
    if (left[lane].length > 3) left[lane].shift();
  }
  return left;
}
