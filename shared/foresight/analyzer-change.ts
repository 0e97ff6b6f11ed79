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
 * The day from which an analyzer's readings lie elsewhere than before: the split in two of its visits, each compared with the
 * other analyzers' readings of the same units, that a two-sample t test finds most surely. Undefined where no split is sure.
 * @param biases of all analyzers, in points of O2
 */
export function analyzerChange(
  analyzer: number,
  intervals: readonly AnalyzerInterval[],
  biases: ArrayLike<number>,
): AnalyzerChange | undefined {
  const seen = visitsOf(analyzer, intervals, biases);
  const n = seen.length;
  const places = n - 2 * LEAST_SIDE + 1;
  let least = FALSE_CHANGE / places;
  let found: AnalyzerChange | undefined;
  for (let cut = LEAST_SIDE; cut <= n - LEAST_SIDE; cut++) {
    const [first, second] = [momentsOf(seen, 0, cut), momentsOf(seen, cut, n)];
    const variance = (first.squares + second.squares) / (n - 2);
    const t = Math.abs(second.mean - first.mean) / Math.sqrt(variance * (1 / cut + 1 / (n - cut)));
    const p = 2 * (1 - studentCdf(t, n - 2));
    if (!(p < least)) continue;
    least = p;
    const sinceSd = Math.sqrt(variance / (n - cut));
    found = { on: Math.floor(seen[cut].day), before: first.mean, since: second.mean, sinceSd };
  }
  return found;
}

interface Seen {
  readonly day: number;
  readonly bias: number;
}

/** One value a visit, the mean over its fires and its two ends, in order of time: they share the visit's own effect. */
function visitsOf(analyzer: number, intervals: readonly AnalyzerInterval[], biases: ArrayLike<number>): Seen[] {
  const visits = new Map<string, { day: number; sum: number; count: number }>();
  const add = (unit: number, day: number, bias: number): void => {
    if (!Number.isFinite(bias)) return;
    const key = `${unit} ${Math.floor(day)}`;
    const visit = visits.get(key);
    if (visit) {
      visit.sum += bias;
      visit.count++;
    } else visits.set(key, { day, sum: bias, count: 1 });
  };
  for (const { unit, from, to, before, after, beyondRate } of intervals) {
    if (before === after) continue;
    if (after === analyzer) add(unit, to, beyondRate + biases[before]);
    if (before === analyzer) add(unit, from, biases[after] - beyondRate);
  }
  return [...visits.values()]
    .map(({ day, sum, count }) => ({ day, bias: sum / count }))
    .sort((a, b) => a.day - b.day || a.bias - b.bias);
}

function momentsOf(seen: readonly Seen[], from: number, to: number): { mean: number; squares: number } {
  let sum = 0;
  for (let i = from; i < to; i++) sum += seen[i].bias;
  const mean = sum / (to - from);
  let squares = 0;
  for (let i = from; i < to; i++) squares += (seen[i].bias - mean) ** 2;
  return { mean, squares };
}
