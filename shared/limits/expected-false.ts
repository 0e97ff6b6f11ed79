export interface CutList {
  /** Positions of the entries kept, most probable first; ties in the order given. */
  readonly kept: readonly number[];
  /** Per kept entry: the expected share of false ones among it and all before it, 0..1. */
  readonly rates: readonly number[];
  /** How many of the kept are expected to be false: the sum of one less the chance. */
  readonly expectedFalse: number;
}

/**
 * Cuts a list of chances so that the expected share of false entries stays within `largestRate` (Bayesian false
 * discovery rate: the mean of one less the chance over the list). Entries below `least`, or NaN, are never kept.
 */
export function cutByExpectedFalse(chances: ArrayLike<number>, least: number, largestRate: number): CutList {
  const order = Array.from({ length: chances.length }, (_, i) => i)
    .filter((i) => chances[i] >= least)
    .sort((a, b) => chances[b] - chances[a] || a - b);
  const kept: number[] = [];
  const rates: number[] = [];
  let expectedFalse = 0;
  for (const entry of order) {
    const grown = expectedFalse + 1 - Math.min(chances[entry], 1);
    // The mean only grows from here on, since the entries come most probable first.
    if (grown / (kept.length + 1) > largestRate) break;
    expectedFalse = grown;
    kept.push(entry);
    rates.push(grown / kept.length);
  }
  return { kept, rates, expectedFalse };
}
