import digamma from '@stdlib/math-base-special-digamma';
import trigamma from '@stdlib/math-base-special-trigamma';
import { exp, ln } from '../quantities/elementary.ts';
import { medianOf } from './median-of.ts';

/** What a group of variances says about one more of them: a scaled inverse chi-squared distribution. */
export interface CommonVariance {
  readonly variance: number;
  /** How many degrees of freedom that knowledge is worth; infinite where the variances differ by no more than chance. */
  readonly freedom: number;
}

/** Fewer variances than this say nothing about one another. */
const LEAST = 3;
/** limma's floor, as a share of the median, for variances so small that their logarithm would rule. */
const FLOOR = 1e-5;

/**
 * The variances' common distribution, from the mean and the scatter of their logarithms (Smyth, Stat. Appl. Genet. Mol.
 * Biol. 3 (2004) art. 3, section 6.2; as R's limma does). With fewer than three variances nothing is known: freedom 0.
 * @param variances positive, each estimated with its entry of `freedom` degrees of freedom
 */
export function commonVariance(variances: readonly number[], freedom: readonly number[]): CommonVariance {
  if (variances.length < LEAST) return { variance: Number.NaN, freedom: 0 };
  const floor = FLOOR * medianOf(variances);
  const floored = variances.map((variance) => Math.max(variance, floor));
  const logs = floored.map((variance, i) => ln(variance) - digamma(freedom[i] / 2) + ln(freedom[i] / 2));
  const middle = meanOf(logs);
  const scatter = logs.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (logs.length - 1);
  const excess = scatter - meanOf(freedom.map((value) => trigamma(value / 2)));
  if (!(excess > 0)) return { variance: meanOf(floored), freedom: Number.POSITIVE_INFINITY };
  const half = inverseTrigamma(excess);
  return { variance: exp(middle + digamma(half) - ln(half)), freedom: 2 * half };
}

/** A variance drawn toward what is common, each weighing by its degrees of freedom. */
export function moderatedVariance(variance: number, freedom: number, common: CommonVariance): number {
  if (common.freedom === 0) return variance;
  if (common.freedom === Number.POSITIVE_INFINITY) return common.variance;
  return (common.freedom * common.variance + freedom * variance) / (common.freedom + freedom);
}

/** x with trigamma(x) = y > 0, by Newton's method on 1 / trigamma, which is convex and nearly linear (Smyth 2004, appendix). */
function inverseTrigamma(y: number): number {
  if (y > 1e7) return 1 / Math.sqrt(y);
  if (y < 1e-6) return 1 / y;
  let x = 0.5 + 1 / y;
  for (let i = 0; i < 50; i++) {
    const value = trigamma(x);
    const step = (value * (1 - value / y)) / slopeOfTrigamma(x, value);
    x += step;
    if (-step / x < 1e-10) break;
  }
  return x;
}

/** The derivative of trigamma, by a central difference: Newton's method asks for no more. */
function slopeOfTrigamma(x: number, value: number): number {
  const width = 1e-4 * x;
  const slope = (trigamma(x + width) - trigamma(x - width)) / (2 * width);
  return slope < 0 ? slope : -value;
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
