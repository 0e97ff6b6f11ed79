import { columnsOf, type FleetProgram } from './fleet-program.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';

/** Per lane, after its last visit, given everything up to then: level and rate, with what the shared effects add. */
export interface LaneStates {
  readonly level: Float64Array;
  readonly rate: Float64Array;
  readonly levelVariance: Float64Array;
  readonly rateVariance: Float64Array;
  readonly covariance: Float64Array;
  /** 1 − (rate's variance now / before the unit's own data): 0 the class speaks, 1 the unit does. */
  readonly ownWeight: Float64Array;
}

/** One filter pass over all units with the shared effects put in (empirical best linear unbiased prediction). */
export function fitLanes(program: FleetProgram, spread: Spread, effects: SharedEffects): LaneStates {
  const lanes = program.laneClass.length;
  const column = (): Float64Array => new Float64Array(lanes);
  const states: LaneStates = {
    level: column(),
    rate: column(),
    levelVariance: column(),
    rateVariance: column(),
    covariance: column(),
    ownWeight: column(),
  };
  const filter = new UnitFilter();
  const total = columnsOf(program.shared);
  for (let unit = 0; unit < program.units; unit++) {
    filter.run(program, unit, spread);
    for (let lane = program.unitLanes[unit]; lane < program.unitLanes[unit + 1]; lane++)
      readLane(filter, program, unit, lane, effects, total, spread, states);
  }
  return states;
}

function readLane(
  filter: UnitFilter,
  program: FleetProgram,
  unit: number,
  lane: number,
  effects: SharedEffects,
  total: number,
  spread: Spread,
  states: LaneStates,
): void {
  const { size, covariance, means, active } = filter;
  const x = 2 * (lane - program.unitLanes[unit]);
  const d = x + 1;
  const first = program.unitColumns[unit];
  let level = means[x];
  let rate = means[d];
  let levelVariance = covariance[x * size + x];
  let rateVariance = covariance[d * size + d];
  let both = covariance[x * size + d];
  states.ownWeight[lane] = Math.min(1, Math.max(0, 1 - rateVariance / (spread.rate * spread.rate)));
  for (let j = 1; j < active; j++) {
    const row = program.columns[first + j - 1];
    const ax = means[j * size + x];
    const ad = means[j * size + d];
    level -= ax * effects.values[row];
    rate -= ad * effects.values[row];
    for (let k = 1; k < active; k++) {
      const shared = effects.covariance[row * total + program.columns[first + k - 1]];
      levelVariance += ax * means[k * size + x] * shared;
      rateVariance += ad * means[k * size + d] * shared;
      both += ax * means[k * size + d] * shared;
    }
  }
  states.level[lane] = level;
  states.rate[lane] = rate;
  states.levelVariance[lane] = levelVariance;
  states.rateVariance[lane] = rateVariance;
  states.covariance[lane] = both;
}
