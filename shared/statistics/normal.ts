import stdlibQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { scaledUpperTail } from './mills-ratio.ts';

/** Standard normal distribution function Φ(z); accurate in both tails, fast enough for quadrature. NaN for NaN. */
export function normalCdf(z: number): number {
  if (!(Math.abs(z) < Number.POSITIVE_INFINITY)) return Number.isNaN(z) ? Number.NaN : z > 0 ? 1 : 0;
  const tail = Math.exp(-0.5 * z * z) * scaledUpperTail(Math.abs(z));
  return z > 0 ? 1 - tail : tail;
}

/** z with Φ(z) = p, 0 ≤ p ≤ 1. */
export function normalQuantile(p: number): number {
  return stdlibQuantile(p, 0, 1);
}
