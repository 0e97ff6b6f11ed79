import type { FleetProgram } from './fleet-program.ts';
import { type EndingColumns, laneEnding, offsetEnding, putEnding } from './lane-ending.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';

/** Per lane, after its last visit, given everything up to then: level and rate, with what the shared effects add. */
export interface LaneStates extends EndingColumns {
  /**
   * What variance and covariance have beyond these when the level is told as the second cell reads it, its offset added: less
   * than nothing where only that cell was read, since what the offset is then does not matter.
   */
  readonly offsetVariance: Float64Array;
  readonly offsetCovariance: Float64Array;
  /** 1 − (rate's variance now / before the unit's own data): 0 the class speaks, 1 the unit does. */
  readonly ownWeight: Float64Array;
}

/** States whose levels, rates and weights may be changed; what offsets add stays as it is. */
export const copyLanes = (states: LaneStates): LaneStates => ({
  level: states.level.slice(),
  rate: states.rate.slice(),
  levelVariance: states.levelVariance.slice(),
  rateVariance: states.rateVariance.slice(),
  covariance: states.covariance.slice(),
  offsetVariance: states.offsetVariance,
  offsetCovariance: states.offsetCovariance,
  ownWeight: states.ownWeight.slice(),
});

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
    offsetVariance: column(),
    offsetCovariance: column(),
    ownWeight: column(),
  };
  const filter = new UnitFilter();
  for (let unit = 0; unit < program.units; unit++) {
    filter.run(program, unit, spread);
    for (let lane = program.unitLanes[unit]; lane < program.unitLanes[unit + 1]; lane++)
      readLane(filter, program, unit, lane, effects, spread, states);
  }
  return states;
}

function readLane(
  filter: UnitFilter,
  program: FleetProgram,
  unit: number,
  lane: number,
  effects: SharedEffects,
  spread: Spread,
  states: LaneStates,
): void {
  const x = 2 * (lane - program.unitLanes[unit]);
  const own = filter.covariance[(x + 1) * filter.size + x + 1];
  const ending = laneEnding(filter, program, unit, x, effects);
  states.ownWeight[lane] = Math.min(1, Math.max(0, 1 - own / (spread.rate * spread.rate)));
  putEnding(states, lane, ending);
  const offset = offsetEnding(filter, program, unit, x, program.laneOffset[lane], effects);
  states.offsetVariance[lane] = offset.variance;
  states.offsetCovariance[lane] = offset.covariance;
}
