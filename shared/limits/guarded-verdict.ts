import { verdictOf } from './verdict.ts';

/**
 * The four states of a value that is known with uncertainty, and unknown: clearly within, within but not by the guard
 * band, outside but not by the guard band, clearly outside (pass, conditional pass, conditional fail, fail).
 */
export type GuardedVerdict = 'within' | 'within_by_less' | 'outside_by_less' | 'outside' | 'unknown';

/** Guard band in standard uncertainties: 1.64 leaves at most 5 % on the wrong side of one limit. */
export const GUARD_FACTOR = 1.64;

/**
 * Guard-banded statement of conformity (ILAC-G8:09/2019, non-binary statement with a guard band; JCGM 106:2012).
 * @param standardUncertainty of the value, in its unit; where it is unknown nothing is said to be clear
 * @param lower NaN where there is no limit on that side; `upper` likewise
 */
export function guardedVerdict(
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
  factor: number = GUARD_FACTOR,
): GuardedVerdict {
  const plain = verdictOf(value, lower, upper);
  if (plain === 'unknown') return 'unknown';
  const guard = factor * standardUncertainty;
  // The nearest limit decides; comparing with NaN is false, so an absent limit never decides.
  if (plain === 'within') {
    const unclear = !(guard >= 0) || value - lower < guard || upper - value < guard;
    return unclear ? 'within_by_less' : 'within';
  }
  return lower - value > guard || value - upper > guard ? 'outside' : 'outside_by_less';
}
