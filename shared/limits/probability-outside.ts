import { normalCdf } from '../statistics/normal.ts';

/**
 * Chance that the true value lies outside its limits when it is known as a normal distribution (JCGM 106:2012, section
 * 7: one less the probability of conformity). NaN where value, uncertainty or both limits are unknown.
 */
export function probabilityOutside(value: number, standardUncertainty: number, lower: number, upper: number): number {
  if (!(standardUncertainty >= 0) || Number.isNaN(value) || (Number.isNaN(lower) && Number.isNaN(upper)))
    return Number.NaN;
  if (standardUncertainty === 0) return value < lower || value > upper ? 1 : 0;
  const below = Number.isNaN(lower) ? 0 : normalCdf((lower - value) / standardUncertainty);
  const above = Number.isNaN(upper) ? 0 : normalCdf((value - upper) / standardUncertainty);
  return Math.min(below + above, 1);
}
