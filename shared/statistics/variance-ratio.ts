import betainc from '@stdlib/math-base-special-betainc';

/** Beyond this the denominator is as good as known, and the tail changes by a thousandth of itself at most where it matters. */
const AS_KNOWN = 1e6;

/**
 * Upper tail of Fisher's F: the chance that two estimates of one variance, with `above` and `below` degrees of freedom, have
 * this ratio or a larger one. `below` may be infinite. By the regularized incomplete beta function.
 */
export function varianceRatioTail(ratio: number, above: number, below: number): number {
  if (!(ratio > 0)) return Number.isNaN(ratio) ? Number.NaN : 1;
  const freedom = Math.min(below, AS_KNOWN);
  return betainc(freedom / (freedom + above * ratio), freedom / 2, above / 2, true, false);
}
