import type { AnalyzerInterval } from './analyzer-intervals.ts';

/** How an analyzer makes burners seem to drift, in points of O2. */
export interface ApparentDrift {
  /** Mean change seen at visits read with it where another analyzer had read the visit before; NaN without such. */
  readonly change: number;
  /** What of that change is the difference of the two biases. */
  readonly byBias: number;
  /** Share of the squares of all changes seen in the fleet that goes when its bias is taken out, 0 to 1. */
  readonly share: number;
}

/** Of every analyzer. @param biasAt bias of an analyzer on a day, in points of O2; NaN where not known */
export function apparentDrift(
  analyzers: number,
  intervals: readonly AnalyzerInterval[],
  biasAt: (analyzer: number, day: number) => number,
): ApparentDrift[] {
  const [count, change, byBias, taken] = Array.from({ length: 4 }, () => new Float64Array(analyzers));
  let squares = 0;
  for (const { before, after, from, to, change: seen } of intervals) {
    squares += seen * seen;
    const [first, second] = [biasAt(before, from), biasAt(after, to)];
    if (!Number.isFinite(first + second)) continue;
    if (before === after) {
      taken[after] += seen * seen - (seen - second + first) ** 2;
      continue;
    }
    count[after]++;
    change[after] += seen;
    byBias[after] += second - first;
    taken[after] += seen * seen - (seen - second) ** 2;
    taken[before] += seen * seen - (seen + first) ** 2;
  }
  return Array.from(count, (times, i) => ({
    change: times > 0 ? change[i] / times : Number.NaN,
    byBias: times > 0 ? byBias[i] / times : Number.NaN,
    share: squares > 0 ? Math.max(0, taken[i] / squares) : Number.NaN,
  }));
}
