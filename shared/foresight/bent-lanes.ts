import { exp, ln } from '../quantities/elementary.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import { type EndingColumns, type LaneEnding, laneEnding, putEnding } from './lane-ending.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';

/**
 * Per lane: how its readings speak for a rate that changed once by N(0, size²), the visit from which being any of those that
 * have readings before and after, all alike. Evidence is ln of the likelihood over that of one rate about the class's; level
 * and rate are those after the last visit if there was a bend, over all visits at which it may lie.
 */
export interface LaneBends extends EndingColumns {
  /** Evidence for one rate all along that stands off its class's by as much: a worn unit from its first visit on. */
  readonly apart: Float64Array;
  /** Evidence for a bend; −Infinity where the lane has no visit at which there could be one. */
  readonly bent: Float64Array;
  /** The visit's step before which a bend lies most probably, -1 for none; and the visit's before. */
  readonly step: Int32Array;
  readonly stepBefore: Int32Array;
}

/** How a lane ends if its rate changed before a step. */
interface Ending extends LaneEnding {
  readonly evidence: number;
  readonly step: number;
  readonly stepBefore: number;
}

/** @param units those to ask; all when left out (the others' evidence stays NaN) */
export function askBends(
  program: FleetProgram,
  spread: Spread,
  effects: SharedEffects,
  size: number,
  units?: ArrayLike<number>,
): LaneBends {
  const lanes = program.laneClass.length;
  const column = (): Float64Array => new Float64Array(lanes).fill(Number.NaN);
  const bends: LaneBends = {
    ...{ apart: column(), bent: column(), level: column(), rate: column() },
    ...{ levelVariance: column(), rateVariance: column(), covariance: column() },
    step: new Int32Array(lanes).fill(-1),
    stepBefore: new Int32Array(lanes).fill(-1),
  };
  const asking = new BendAsker(program, spread, effects, size);
  const count = units ? units.length : program.units;
  for (let i = 0; i < count; i++) asking.ask(units ? units[i] : i, bends);
  return bends;
}

class BendAsker {
  readonly #filter = new UnitFilter();
  readonly #branch = new UnitFilter();
  constructor(
    readonly program: FleetProgram,
    readonly spread: Spread,
    readonly effects: SharedEffects,
    readonly size: number,
  ) {}

  ask(unit: number, bends: LaneBends): void {
    const { program, spread } = this;
    const [from, to] = [program.unitSteps[unit], program.unitSteps[unit + 1]];
    const first = program.unitLanes[unit];
    const lanes = program.unitLanes[unit + 1] - first;
    const begins = seriesBegin(program, unit);
    const places = Array.from({ length: lanes }, (_, lane) => bendPlaces(program, begins[lane], to, lane));
    const apart = new Float64Array(lanes);
    const endings: Ending[][] = places.map(() => []);
    this.#filter.begin(program, unit);
    for (let step = from; step < to; step++) {
      for (let lane = 0; lane < lanes; lane++) {
        const before = places[lane].get(step);
        if (before !== undefined) endings[lane].push(this.#run(unit, step, lane, before));
      }
      this.#filter.take(program, unit, step, spread);
      // A rate apart from its class's from the start is a bend before anything was read.
      for (let lane = 0; lane < lanes; lane++)
        if (step === begins[lane]) apart[lane] = this.#run(unit, step + 1, lane, -1).evidence;
    }
    const plain = criterionGiven(this.#filter, program, unit, this.effects);
    for (let lane = 0; lane < lanes; lane++) {
      bends.apart[first + lane] = apart[lane] + 0.5 * plain;
      gather(bends, first + lane, endings[lane], 0.5 * plain);
    }
  }

  /** From the filter's state before a step on, a lane's rate let go there. */
  #run(unit: number, from: number, lane: number, stepBefore: number): Ending {
    const { program, spread, effects, size } = this;
    const branch = this.#branch;
    branch.copy(this.#filter);
    branch.loosen(lane, size);
    for (let step = from; step < program.unitSteps[unit + 1]; step++) branch.take(program, unit, step, spread);
    const evidence = -0.5 * criterionGiven(branch, program, unit, effects);
    return { evidence, step: from, stepBefore, ...laneEnding(branch, program, unit, 2 * lane, effects) };
  }
}

/** Per lane of a unit: the step that begins its series in force. */
function seriesBegin({ unitSteps, unitLanes, kind, lane }: FleetProgram, unit: number): Int32Array {
  const begins = new Int32Array(unitLanes[unit + 1] - unitLanes[unit]).fill(unitSteps[unit]);
  for (let step = unitSteps[unit]; step < unitSteps[unit + 1]; step++)
    if (kind[step] === STEP.renew) begins[lane[step]] = step;
  return begins;
}

/** Visits before which a lane's rate may have changed: read at two visits before and at one after. Each with the visit before. */
function bendPlaces({ kind, lane }: FleetProgram, from: number, to: number, of: number): Map<number, number> {
  const visits: number[] = [];
  let visit = -1;
  for (let step = from; step < to; step++) {
    if (kind[step] === STEP.visit) visit = step;
    const isRead = kind[step] === STEP.read || kind[step] === STEP.set || kind[step] === STEP.left;
    if (isRead && lane[step] === of && visits[visits.length - 1] !== visit) visits.push(visit);
  }
  return new Map(visits.slice(2).map((step, i) => [step, visits[i + 1]]));
}

/** −2 log likelihood of a unit's readings, the shared effects being what they are, up to a constant. */
function criterionGiven(
  { products, stride, active, logDeterminant }: UnitFilter,
  program: FleetProgram,
  unit: number,
  { values }: SharedEffects,
): number {
  const first = program.unitColumns[unit];
  let squares = products[0];
  for (let j = 1; j < active; j++) {
    const value = values[program.columns[first + j - 1]];
    squares -= 2 * value * products[j * stride];
    for (let k = 1; k <= j; k++)
      squares += (k === j ? 1 : 2) * value * values[program.columns[first + k - 1]] * products[j * stride + k];
  }
  return logDeterminant + squares;
}

function gather(bends: LaneBends, lane: number, endings: readonly Ending[], plain: number): void {
  bends.bent[lane] = Number.NEGATIVE_INFINITY;
  if (endings.length === 0) return;
  const most = endings.reduce((best, ending) => (ending.evidence > best.evidence ? ending : best));
  const weights = endings.map(({ evidence }) => exp(evidence - most.evidence));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  bends.bent[lane] = plain + most.evidence + ln(total / endings.length);
  bends.step[lane] = most.step;
  bends.stepBefore[lane] = most.stepBefore;
  putEnding(bends, lane, mixEndings(endings.map((ending, i) => ({ ...ending, weight: weights[i] / total }))));
}

/** Means and covariances of a mixture. */
export function mixEndings(endings: readonly (LaneEnding & { readonly weight: number })[]): LaneEnding {
  let [level, rate, levelVariance, rateVariance, covariance] = [0, 0, 0, 0, 0];
  for (const ending of endings) {
    level += ending.weight * ending.level;
    rate += ending.weight * ending.rate;
  }
  for (const ending of endings) {
    const [dx, dd] = [ending.level - level, ending.rate - rate];
    levelVariance += ending.weight * (ending.levelVariance + dx * dx);
    covariance += ending.weight * (ending.covariance + dx * dd);
    rateVariance += ending.weight * (ending.rateVariance + dd * dd);
  }
  return { level, rate, levelVariance, rateVariance, covariance };
}
