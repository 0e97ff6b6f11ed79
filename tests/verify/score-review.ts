import type { DriftResult } from '../../cells/drift/compute.ts';
import { DEFAULT_BANDS } from '../../shared/foresight/default-bands.ts';
import { describeLanes } from '../../shared/foresight/describe-lanes.ts';
import { readDrift } from '../../shared/foresight/drift-readings.ts';
import { fitLanes } from '../../shared/foresight/fit-fleet.ts';
import { judgeDrift } from '../../shared/foresight/judge-drift.ts';
import { solveShared, sumEquations } from '../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR, type Spread } from '../../shared/foresight/spread.ts';
import { ProgramWriter } from '../../shared/foresight/write-program.ts';
import { withoutZones } from '../../shared/foresight/zone-months.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { passTwoBarriers } from '../../shared/statistics/first-passage.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Session } from '../../src/notebook/session.ts';
import { AIR, FUELS, type LaneTruth, TARGET, type WrittenFleet, type WrittenPlan } from './written-fleet.ts';

export interface ReviewScore {
  readonly lanes: number;
  /** Share of true rates inside slope_lower to slope_upper, and of true levels within 1.96 of their standard deviations. */
  readonly covered: number;
  readonly levelCovered: number;
  readonly meanError: number;
  /** Expected Brier skill of probability_out_by_horizon over that of the true level and rate. */
  readonly skill: number;
  /** The same of a fit that is told every hyperparameter: the most that anyone can make of these readings. */
  readonly ceiling: number;
  readonly told: number;
  readonly truth: number;
  readonly late: LateScore;
}

/** Lanes that began to drift late: how many there are, told as such, dated within a year, covered; and how many others are told. */
export interface LateScore {
  readonly lanes: number;
  readonly found: number;
  readonly dated: number;
  readonly covered: number;
  readonly others: number;
}

const keyOf = (unit: string, fire: string): string => `${unit} ${fire}`;
const co2PerO2 = ({ fuel, co2maxRatio }: WrittenPlan): number => -(FUELS[fuel].co2max * co2maxRatio) / AIR;

/** Holds drift.csv of a review against the truth, in points of O2. */
export function scoreReview(plan: WrittenPlan, fleet: WrittenFleet, session: Session): ReviewScore {
  const { truth, asOf } = fleet;
  const drift = tableOf(session, 'drift', 'drift');
  const [unit, fire] = ['unit', 'fire'].map((name) => textsOf(drift, name));
  const rowOf = new Map(
    Array.from({ length: drift.rows }, (_, row) => [keyOf(textAt(unit, row), textAt(fire, row)), row]),
  );
  const at = (lane: LaneTruth): number => rowOf.get(keyOf(lane.unit, lane.fire)) ?? -1;
  const factor = plan.quantity === 'co2' ? co2PerO2(plan) : 1;
  const [rate, lower, upper, out, began] = [
    'slope_per_year',
    'slope_lower',
    'slope_upper',
    'probability_out_by_horizon',
    'drift_began_on',
  ].map((name) => numbersOf(drift, name));
  const isCovered = (lane: LaneTruth): boolean =>
    lower[at(lane)] <= lane.rate * factor && lane.rate * factor <= upper[at(lane)];
  const truths = truth.map((lane) => chanceOf(lane, plan, asOf));
  const ceiling = ceilingOf(plan, session, asOf);
  const skill = (told: (lane: LaneTruth) => number): number =>
    skillOf(truth.map(told), truths) / skillOf(truths, truths);
  const mean = (of: (lane: LaneTruth) => number): number =>
    truth.reduce((sum, lane) => sum + of(lane), 0) / truth.length;
  const isToldLate = (lane: LaneTruth): boolean => Number.isFinite(began[at(lane)]);
  const late = truth.filter((lane) => plan.lateShare > 0 && lane.rate === plan.lateRate);
  const count = (lanes: readonly LaneTruth[], test: (lane: LaneTruth) => boolean): number => lanes.filter(test).length;
  return {
    lanes: truth.length,
    covered: mean((lane) => Number(isCovered(lane))),
    levelCovered: levelsCovered(resultOf(session), truth),
    meanError: mean((lane) => rate[at(lane)] / factor - lane.rate),
    skill: skill((lane) => out[at(lane)]),
    ceiling: skill((lane) => ceiling.get(keyOf(lane.unit, lane.fire)) ?? Number.NaN),
    told: mean((lane) => out[at(lane)]),
    truth: truths.reduce((sum, chance) => sum + chance, 0) / truths.length,
    late: {
      lanes: late.length,
      found: count(late, isToldLate),
      dated: count(late, (lane) => Math.abs(began[at(lane)] - lane.lateSince) < 1.05 * DAYS_PER_YEAR),
      covered: count(late, isCovered),
      others: count(truth, (lane) => isToldLate(lane) && !late.includes(lane)),
    },
  };
}

/** Levels after the last visit, as fitted in O2. */
function levelsCovered({ fitted }: DriftResult, truth: readonly LaneTruth[]): number {
  const { lanes, states } = fitted;
  const truths = new Map(truth.map((lane) => [keyOf(lane.unit, lane.fire), lane.level]));
  const near = lanes.filter(({ unit, fire }, lane) => {
    const apart = Math.abs(states.level[lane] - (truths.get(keyOf(unit, fire)) ?? Number.NaN));
    return apart < 1.96 * Math.sqrt(states.levelVariance[lane]);
  });
  return near.length / lanes.length;
}

function resultOf(session: Session): DriftResult {
  const result = session.result('drift') as DriftResult | undefined;
  if (!result) throw new Error('no drift');
  return result;
}

export function tableOf(session: Session, cell: string, name: string): Table {
  const table = session.result(cell)?.tables[name];
  if (!table) throw new Error(`no table ${name} of ${cell}`);
  return table;
}

/** Chance of having been outside between the last visit and a year from the day, level and rate being what they are. */
export function chanceOf({ level, rate, lastDay }: LaneTruth, plan: WrittenPlan, asOf: number): number {
  const years = (asOf + 365 - lastDay) / DAYS_PER_YEAR;
  const motion = { drift: rate, driftSd: 0, diffusion: plan.wander };
  return passTwoBarriers(TARGET + plan.above - level, level - TARGET + plan.below, motion, years);
}

/** Expected Brier skill against the mean chance: outcomes are drawn with the true chances. */
function skillOf(told: readonly number[], truths: readonly number[]): number {
  const mean = truths.reduce((sum, chance) => sum + chance, 0) / truths.length;
  const score = (of: (place: number) => number): number =>
    truths.reduce((sum, chance, place) => sum + (of(place) - chance) ** 2 + chance * (1 - chance), 0);
  return 1 - score((place) => told[place]) / score(() => mean);
}

/** Chances told of each lane by the same model with the fleet's own hyperparameters put in. */
function ceilingOf(plan: WrittenPlan, session: Session, asOf: number): ReadonlyMap<string, number> {
  const tables = {
    readings: tableOf(session, 'readings', 'accepted'),
    derived: tableOf(session, 'derive', 'derived'),
    units: tableOf(session, 'register', 'units'),
    limits: tableOf(session, 'register', 'limits'),
    events: undefined,
  };
  const read = readDrift(tables, asOf, true);
  const all = new ProgramWriter(read.fleet).write();
  const written = { ...all, program: withoutZones(all.program) };
  const { program } = written;
  const spread = trueSpread(plan);
  const effects = solveShared(sumEquations(program, spread), program.shared, spread, DRIFT_PRIOR);
  const states = fitLanes(program, spread, effects);
  const { fitted } = resultOf(session);
  const known = {
    ...fitted,
    lanes: describeLanes(read, { written, effects }, tables),
    states: { ...fitted.states, ...states },
    estimate: { ...fitted.estimate, spread },
  };
  const options = { horizonDays: 365, quantity: 'as_target', bands: DEFAULT_BANDS, dates: false } as const;
  const rows = judgeDrift(known, { ...tables }, options);
  return new Map(rows.map(({ unit, fire, judged }) => [keyOf(unit, fire), judged.outBy]));
}

/** What the simulation draws with; instruments round to a tenth. */
function trueSpread({ noise, visitSd, wander, rateSd, analyzerSd, fuel, recordLeft }: WrittenPlan): Spread {
  const rounded = (sd: number, step: number): number => Math.sqrt(sd * sd + (step * step) / 12);
  return {
    ...DRIFT_PRIOR.typical,
    reading: rounded(noise, 0.1),
    secondReading: rounded(1.2 * noise, (0.1 * AIR) / FUELS[fuel].co2max),
    settling: 0,
    visit: visitSd,
    wander,
    rate: Math.max(rateSd, 1e-3),
    rateWander: 1e-4,
    analyzer: analyzerSd,
    secondAnalyzer: analyzerSd,
    // A crew's own noise; of the next reading's distance from the aim half is the setting's, half the reading's.
    left: recordLeft ? noise * Math.SQRT1_2 : noise,
    leftShare: 0.5,
    byDisplay: 1,
    unrecorded: 0.01,
    kept: 0.01,
    air: 0.05,
    classRate: 0.01,
  };
}
