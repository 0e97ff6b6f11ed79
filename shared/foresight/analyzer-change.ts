import { studentCdf } from '../statistics/student.ts';
import type { AnalyzerInterval } from './analyzer-intervals.ts';

/** When an analyzer began to read otherwise, and the chance of seeing as much at one that did not. */
export interface AnalyzerChange {
  readonly on: number;
  readonly chance: number;
  /** Whether it reads more since. */
  readonly upward: boolean;
}

/** Visits on either side of a change, below which none is looked for. */
const LEAST_SIDE = 5;
/** Points of O2 below which a change matters to nobody: what an analyzer shows as one digit. */
const MATTERS_O2 = 0.1;
/** Chance of a false change an analyzer, over all the days at which it might lie (Bonferroni). */
const FALSE_CHANGE = 0.002;

/**
 * Per analyzer, the day from which its readings lie elsewhere than before: the split in two of its visits, each compared with
 * the other analyzers' readings of the same units, that a two-sample t test finds most surely. Undefined where no split is sure, and
 * where the other analyzers came to read otherwise as well or none of them was used since: then it is the gas or the weather, or
 * may be.
 * @param biases of all analyzers, in points of O2
 */
export function analyzerChanges(
  intervals: readonly AnalyzerInterval[],
  biases: ArrayLike<number>,
): (AnalyzerChange | undefined)[] {
  const visits = lessOthers(visitsOf(intervals, biases).map(centered));
  return visits.map((seen, analyzer) => {
    const change = changeAmong(seen);
    const others = change && visits.filter((_, other) => other !== analyzer).flat();
    return others && isOwn(change, seen, others) ? change : undefined;
  });
}

function changeAmong(seen: readonly Seen[]): AnalyzerChange | undefined {
  const n = seen.length;
  const { sums, squares } = runningSums(seen);
  let most = 0;
  let place = -1;
  let upward = false;
  for (let cut = LEAST_SIDE; cut <= n - LEAST_SIDE; cut++) {
    const apart = Math.abs((sums[n] - sums[cut]) / (n - cut) - sums[cut] / cut);
    const t = apart / Math.sqrt(withinSides(sums, squares, cut) * (1 / cut + 1 / (n - cut)));
    if (!(apart >= MATTERS_O2 && t > most)) continue;
    most = t;
    place = cut;
    upward = sums[n] / n > sums[cut] / cut;
  }
  if (place < 0) return undefined;
  const chance = 2 * (1 - studentCdf(most, n - 2)) * (n - 2 * LEAST_SIDE + 1);
  return chance < FALSE_CHANGE ? { on: Math.floor(seen[place].day), chance, upward } : undefined;
}

/** Whether an analyzer changed on a day by more than all the others together did. */
function isOwn({ on }: AnalyzerChange, seen: readonly Seen[], others: readonly Seen[]): boolean {
  const [own, rest] = [stepOn(on, seen), stepOn(on, others)];
  const t = Math.abs(own.step - rest.step) / Math.sqrt(own.variance + rest.variance);
  return 2 * (1 - studentCdf(t, seen.length - 2)) < FALSE_CHANGE;
}

/** Mean since a day less the mean before, and its variance; not a number where either side has too few visits. */
function stepOn(on: number, seen: readonly Seen[]): { readonly step: number; readonly variance: number } {
  const sorted = [...seen].sort((a, b) => a.day - b.day);
  const [n, cut] = [sorted.length, sorted.filter(({ day }) => day < on).length];
  if (cut < LEAST_SIDE || n - cut < LEAST_SIDE) return { step: Number.NaN, variance: Number.NaN };
  const { sums, squares } = runningSums(sorted);
  const variance = withinSides(sums, squares, cut) * (1 / cut + 1 / (n - cut));
  return { step: (sums[n] - sums[cut]) / (n - cut) - sums[cut] / cut, variance };
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

/** Days of a span in which what the other analyzers read tells what the gas and the weather did. */
const SPAN_DAYS = 30;
/** Their visits in a span below which they tell nothing. */
const LEAST_OTHERS = 3;

/** About the analyzer's own mean: who of the others was there then must not matter. */
function centered(seen: readonly Seen[]): Seen[] {
  const mean = seen.reduce((sum, { bias }) => sum + bias, 0) / seen.length;
  return seen.map((visit) => ({ ...visit, bias: visit.bias - mean }));
}

/** What each analyzer read beyond the others in the same span of days. */
function lessOthers(visits: readonly (readonly Seen[])[]): Seen[][] {
  const spanOf = ({ day }: Seen): number => Math.floor(day / SPAN_DAYS);
  const all = spanSums(visits.flat(), spanOf);
  return visits.map((seen) => {
    const own = spanSums(seen, spanOf);
    return seen.map((visit) => {
      const [whole, part] = [all, own].map((sums) => sums.get(spanOf(visit)) ?? { sum: 0, count: 0 });
      const others = whole.count - part.count;
      return others < LEAST_OTHERS ? visit : { ...visit, bias: visit.bias - (whole.sum - part.sum) / others };
    });
  });
}

function spanSums(seen: readonly Seen[], spanOf: (visit: Seen) => number): Map<number, { sum: number; count: number }> {
  const sums = new Map<number, { sum: number; count: number }>();
  for (const visit of seen) {
    const known = sums.get(spanOf(visit)) ?? { sum: 0, count: 0 };
    sums.set(spanOf(visit), { sum: known.sum + visit.bias, count: known.count + 1 });
  }
  return sums;
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
