import { mixtureQuantile } from '../statistics/mixture-quantile.ts';
import { type LaneBends, mixEndings } from './bent-lanes.ts';
import { copyLanes } from './fit-fleet.ts';
import type { LooseStates } from './heavy-tails.ts';
import { endingAt, type LaneEnding, putEnding } from './lane-ending.ts';

/** Chances below which a bend is left out of a lane's state, and from which it is told. */
const LEAST_CHANCE = 0.01;
export const TOLD_CHANCE = 0.5;

/**
 * Lane states in which each possibility, one rate all along or one that changed, has its chance: means and covariances of
 * the mixture, and the ends of the rate's interval. A small chance of a change that the readings can hardly tell widens the variance
 * by far more than it moves these ends.
 * @param size standard deviation of a change of rate
 */
export function mixBends(states: LooseStates, bends: LaneBends, chance: Float64Array, size: number): LooseStates {
  const mixed: LooseStates = {
    ...copyLanes(states),
    priorRate: states.priorRate,
    priorRateVariance: states.priorRateVariance.slice(),
    rateBelow: states.rateBelow.slice(),
    rateAbove: states.rateAbove.slice(),
  };
  chance.forEach((weight, lane) => {
    if (!(weight >= LEAST_CHANCE) || !Number.isFinite(bends.level[lane])) return;
    const parts = [
      { ...endingAt(states, lane), weight: 1 - weight },
      { ...endingAt(bends, lane), weight },
    ];
    const ending = mixEndings(parts);
    putEnding(mixed, lane, ending);
    mixed.rateBelow[lane] = intervalEnd(parts, ending, -1);
    mixed.rateAbove[lane] = intervalEnd(parts, ending, 1);
    mixed.priorRateVariance[lane] += weight * size * size;
    mixed.ownWeight[lane] = Math.min(1, Math.max(0, 1 - ending.rateVariance / mixed.priorRateVariance[lane]));
  });
  return mixed;
}

const NINETY_FIVE = 1.959963984540054;

/** @param side -1 for the lower end, 1 for the upper */
function intervalEnd(parts: readonly (LaneEnding & { weight: number })[], whole: LaneEnding, side: 1 | -1): number {
  const rates = parts.map(({ weight, rate, rateVariance }) => ({ weight, mean: rate, sd: Math.sqrt(rateVariance) }));
  const end = mixtureQuantile(rates, 0.5 + 0.475 * side);
  return (side * (end - whole.rate)) / (NINETY_FIVE * Math.sqrt(whole.rateVariance));
}
