import { normalCdf, normalQuantile } from './normal.ts';

/** One of several normals; the weights of all add up to one. */
export interface MixedNormal {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** Halvings of the bracket: a tenth of a millionth of it, far finer than any end of an interval is known. */
const HALVINGS = 24;

/** Quantile of a mixture of normals, by halving between the least and the greatest of theirs, where it must lie. */
export function mixtureQuantile(parts: readonly MixedNormal[], probability: number): number {
  const z = normalQuantile(probability);
  const own = parts.map(({ mean, sd }) => mean + z * sd);
  let [low, high] = [Math.min(...own), Math.max(...own)];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (low + high);
    const below = parts.reduce((sum, { weight, mean, sd }) => sum + weight * normalCdf((middle - mean) / sd), 0);
    if (below < probability) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
