import { type LaneBends, mixEndings } from './bent-lanes.ts';
import { copyLanes } from './fit-fleet.ts';
import type { LooseStates } from './heavy-tails.ts';
import { endingAt, putEnding } from './lane-ending.ts';

/** Chances below which a bend is left out of a lane's state, and from which it is told. */
const LEAST_CHANCE = 0.01;
export const TOLD_CHANCE = 0.5;

/**
 * Lane states in which each possibility, one rate all along or one that changed, has its chance: means and covariances of
 * the mixture.
 * @param size standard deviation of a change of rate
 */
export function mixBends(states: LooseStates, bends: LaneBends, chance: Float64Array, size: number): LooseStates {
  const mixed: LooseStates = {
    ...copyLanes(states),
    priorRate: states.priorRate,
    priorRateVariance: states.priorRateVariance.slice(),
  };
  chance.forEach((weight, lane) => {
    if (!(weight >= LEAST_CHANCE) || !Number.isFinite(bends.level[lane])) return;
    const ending = mixEndings([
      { ...endingAt(states, lane), weight: 1 - weight },
      { ...endingAt(bends, lane), weight },
    ]);
    putEnding(mixed, lane, ending);
    mixed.priorRateVariance[lane] += weight * size * size;
    mixed.ownWeight[lane] = Math.min(1, Math.max(0, 1 - ending.rateVariance / mixed.priorRateVariance[lane]));
  });
  return mixed;
}
