import { type LaneBends, mixEndings } from './bent-lanes.ts';
import type { LooseStates } from './heavy-tails.ts';

/** Chances below which a bend is left out of a lane's state, and from which it is told. */
const LEAST_CHANCE = 0.01;
export const TOLD_CHANCE = 0.5;

/**
 * Lane states in which each possibility, one rate all along or one that changed, has its chance: means and covariances of
 * the mixture.
 * @param size standard deviation of a change of rate
 */
export function mixBends(states: LooseStates, bends: LaneBends, chance: Float64Array, size: number): LooseStates {
  const copy = (values: Float64Array): Float64Array => values.slice();
  const mixed: LooseStates = {
    level: copy(states.level),
    rate: copy(states.rate),
    levelVariance: copy(states.levelVariance),
    rateVariance: copy(states.rateVariance),
    covariance: copy(states.covariance),
    offsetVariance: states.offsetVariance,
    offsetCovariance: states.offsetCovariance,
    ownWeight: copy(states.ownWeight),
    priorRate: states.priorRate,
    priorRateVariance: copy(states.priorRateVariance),
  };
  chance.forEach((weight, lane) => {
    if (!(weight >= LEAST_CHANCE) || !Number.isFinite(bends.level[lane])) return;
    const of = (from: LaneBends | LooseStates, share: number) => ({
      weight: share,
      level: from.level[lane],
      rate: from.rate[lane],
      levelVariance: from.levelVariance[lane],
      rateVariance: from.rateVariance[lane],
      covariance: from.covariance[lane],
    });
    const ending = mixEndings([of(states, 1 - weight), of(bends, weight)]);
    mixed.level[lane] = ending.level;
    mixed.rate[lane] = ending.rate;
    mixed.levelVariance[lane] = ending.levelVariance;
    mixed.rateVariance[lane] = ending.rateVariance;
    mixed.covariance[lane] = ending.covariance;
    mixed.priorRateVariance[lane] += weight * size * size;
    mixed.ownWeight[lane] = Math.min(1, Math.max(0, 1 - ending.rateVariance / mixed.priorRateVariance[lane]));
  });
  return mixed;
}
