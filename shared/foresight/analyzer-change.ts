import { studentCdf } from '../statistics/student.ts';
import type { AnalyzerInterval } from './analyzer-intervals.ts';

/** When an analyzer began to read otherwise, and what it read before and since, in points of O2 beyond the fleet's mean. */
export interface AnalyzerChange {
  readonly on: number;
  readonly before: number;
  readonly since: number;
  /** Standard error of `since`. */
  readonly sinceSd: number;
}

/** Visits on either side of a change, below which none is looked for. */
const LEAST_SIDE = 5;
/** Chance of a false change an analyzer, over all the days at which it might lie (Bonferroni). */
const FALSE_CHANGE = 0.002;

/**
 * Per analyzer, the day from which its readings lie elsewhere than before: the split in two of its visits, each compared with
 * the other analyzers' readings of the same units, that a two-sample t test finds most surely. Undefined where no split is sure.
 * @param biases of all analyzers, in points of O2
 */
export function analyzerChanges(
  intervals: readonly AnalyzerInterval[],
  biases: ArrayLike<number>,
): (AnalyzerChange | undefined)[] {
  return visitsOf(intervals, biases).map(changeAmong);
}

function changeAmong(seen: readonly Seen[]): AnalyzerChange | undefined {
  const n = seen.length;
  const { sums, squares } = runningSums(seen);
  let most = 0;
  let place = -1;
  for (let cut = LEAST_SIDE; cut <= n - LEAST_SIDE; cut++) {
    const apart = Math.abs((sums[n] - sums[cut]) / (n - cut) - sums[cut] / cut);
    const t = apart / Math.sqrt(withinSides(sums, squares, cut) * (1 / cut + 1 / (n - cut)));
    if (!(t > most)) continue;
    most = t;
    place = cut;
  }
  const places = n - 2 * LEAST_SIDE + 1;
  if (place < 0 || 2 * (1 - studentCdf(most, n - 2)) >= FALSE_CHANGE / places) return undefined;
  const since = (sums[n] - sums[place]) / (n - place);
  const sinceSd = Math.sqrt(withinSides(sums, squares, place) / (n - place));
  return { on: Math.floor(seen[place].day), before: sums[place] / place, since, sinceSd };
}

/** Sums and sums of squares of the first 0, 1, 2 ... visits. */
function runningSums(seen: readonly Seen[]): { sums: Float64Array; squares: Float64Array } {
  const sums = new Float64Array(seen.length + 1);
  const squares = new Float64Array(seen.length + 1);
  seen.forEach(({ bias }, i) => {
    sums[i + 1] = sums[i] + bias;
    squares[i + 1] = squares[i] + bias * bias;
  });
  return { sums, squares };
}

/** Variance about the two sides' own means. */
function withinSides(sums: Float64Array, squares: Float64Array, cut: number): number {
  const n = sums.length - 1;
  const rest = sums[n] - sums[cut];
  return Math.max(0, squares[n] - (sums[cut] * sums[cut]) / cut - (rest * rest) / (n - cut)) / (n - 2);
}

interface Seen {
  readonly day: number;
  readonly bias: number;
}

/** Later than any day that a reading bears. */
const DAYS = 1_000_000;

/** Per analyzer, one value a visit, the mean over its fires and its two ends, by time: they share the visit's own effect. */
function visitsOf(intervals: readonly AnalyzerInterval[], biases: ArrayLike<number>): Seen[][] {
  const visits = Array.from(biases, () => new Map<number, { day: number; sum: number; count: number }>());
  const add = (analyzer: number, unit: number, day: number, bias: number): void => {
    if (!Number.isFinite(bias)) return;
    const key = unit * DAYS + Math.floor(day);
    const visit = visits[analyzer].get(key);
    if (visit) {
      visit.sum += bias;
      visit.count++;
    } else visits[analyzer].set(key, { day, sum: bias, count: 1 });
  };
  for (const { unit, from, to, before, after, beyondRate } of intervals) {
    if (before === after) continue;
    add(after, unit, to, beyondRate + biases[before]);
    add(before, unit, from, biases[after] - beyondRate);
  }
  return visits.map((own) =>
    [...own.values()]
      .map(({ day, sum, count }) => ({ day, bias: sum / count }))
      .sort((a, b) => a.day - b.day || a.bias - b.bias),
  );
}
