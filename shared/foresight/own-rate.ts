import { normalCdf } from '../statistics/normal.ts';

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
