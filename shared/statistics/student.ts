import stdlibCdf from '@stdlib/stats-base-dists-t-cdf';
import stdlibQuantile from '@stdlib/stats-base-dists-t-quantile';

/** Distribution function of Student's t with `freedom` > 0 degrees of freedom. */
export function studentCdf(t: number, freedom: number): number {
  return stdlibCdf(t, freedom);
}

/** t with P(T ≤ t) = p. */
export function studentQuantile(p: number, freedom: number): number {
  return stdlibQuantile(p, freedom);
}
