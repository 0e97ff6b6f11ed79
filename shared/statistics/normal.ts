import stdlibQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { exp } from '../quantities/elementary.ts';
import { scaledUpperTail } from './mills-ratio.ts';

/** Standard normal distribution function Φ(z); accurate in both tails, fast enough for quadrature. NaN for NaN. */
export function normalCdf(z: number): number {
  if (!Number.isFinite(z)) return Number.isNaN(z) ? Number.NaN : z > 0 ? 1 : 0;
  const tail = exp(-0.5 * z * z) * scaledUpperTail(Math.abs(z));
  return z > 0 ? 1 - tail : tail;
}

/**
 * z with Φ(z) = p, 0 ≤ p ≤ 1. The library's value (wrong by 1e-8 at p = 1e-10) is polished by one step of Halley's method
 * on the accurate tail.
 */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const z = stdlibQuantile(p, 0, 1);
  if (!Number.isFinite(z) || z === 0) return z;
  const step = (normalCdf(z) - p) * Math.sqrt(2 * Math.PI) * exp(0.5 * z * z);
  return z - step / (1 + 0.5 * z * step);
}
