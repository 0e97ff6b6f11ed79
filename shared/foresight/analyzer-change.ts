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
  const visits = lessOthers(visitsOf(intervals, biases));
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

/**
 * What each analyzer read beyond the others in the same span of days, each about its own mean: who of the others was there then
 * must not matter.
 */
function lessOthers(visits: readonly (readonly Seen[])[]): Seen[][] {
  const means = visits.map((seen) => seen.reduce((sum, { bias }) => sum + bias, 0) / seen.length);
  const own = visits.map((seen, analyzer) => spanSums(seen, means[analyzer]));
  const all = new Map<number, SpanSum>();
  for (const sums of own) for (const [span, { sum, count }] of sums) addTo(all, span, sum, count);
  return visits.map((seen, analyzer) =>
    seen.map(({ day, bias }) => {
      const [whole, part] = [all, own[analyzer]].map((sums) => sums.get(spanOf(day)) ?? { sum: 0, count: 0 });
      const others = whole.count - part.count;
      const usual = others < LEAST_OTHERS ? 0 : (whole.sum - part.sum) / others;
      return { day, bias: bias - means[analyzer] - usual };
    }),
  );
}

interface SpanSum {
  sum: number;
  count: number;
}

const spanOf = (day: number): number => Math.floor(day / SPAN_DAYS);

function spanSums(seen: readonly Seen[], mean: number): Map<number, SpanSum> {
  const sums = new Map<number, SpanSum>();
  for (const { day, bias } of seen) addTo(sums, spanOf(day), bias - mean, 1);
  return sums;
}

function addTo(sums: Map<number, SpanSum>, span: number, sum: number, count: number): void {
  const known = sums.get(span);
  if (known) {
    known.sum += sum;
    known.count += count;
  } else sums.set(span, { sum, count });
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
