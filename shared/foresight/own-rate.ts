import { normalCdf } from '../statistics/normal.ts';
import type { LevelState } from './leaving-chance.ts';

/**
 * What a unit's own readings say about its rate, the class taken out again: a pooled rate is the precision-weighted
 * mean of the class's and the unit's own, so the own one and its standard error follow from the pooled one.
 * @param classSd standard deviation of rates within the class
 */
export function ownRate(
  pooled: number,
  variance: number,
  classMean: number,
  classSd: number,
): { rate: number; se: number } {
  const prior = 1 / (classSd * classSd);
  const own = 1 / variance - prior;
  if (!(own > 1e-9 * prior)) return { rate: Number.NaN, se: Number.NaN };
  return { rate: (pooled / variance - classMean * prior) / own, se: Math.sqrt(1 / own) };
}

/** One-sided p value of "it does not grow"; NaN where the own readings say nothing. */
export function growthPValue({ rate, se }: { rate: number; se: number }): number {
  return normalCdf(-rate / se);
}

/**
 * Level and rate with the class taken out of the rate: a unit whose growth has been found real is no longer one of its
 * class, and is not drawn back to it. The pooled state as it is where the readings say nothing on their own.
 */
export function ownState(state: LevelState, classMean: number, classSd: number): LevelState {
  const { levelVariance: a, covariance: b, rateVariance: c } = state;
  const determinant = a * c - b * b;
  const prior = 1 / (classSd * classSd);
  // Precision of level and rate, the prior's share of the rate's taken out, and its inverse.
  const [p, q, r] = [c / determinant, -b / determinant, a / determinant - prior];
  const rest = p * r - q * q;
  if (!(rest > 0 && r > 0)) return state;
  const h = [p * state.level + q * state.rate, q * state.level + (r + prior) * state.rate - prior * classMean];
  return {
    ...state,
    level: (r * h[0] - q * h[1]) / rest,
    rate: (p * h[1] - q * h[0]) / rest,
    levelVariance: r / rest,
    rateVariance: p / rest,
    covariance: -q / rest,
  };
}
