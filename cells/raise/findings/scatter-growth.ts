import { scatterGrowing } from '../../../shared/messages/raise-signs.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { medianOf } from '../../../shared/statistics/median-of.ts';
import { commonVariance, moderatedVariance } from '../../../shared/statistics/moderated-variance.ts';
import { varianceRatioTail } from '../../../shared/statistics/variance-ratio.ts';
import type { VisitedLane } from './lane-visits.ts';
import type { Sign } from './sign.ts';

const LEAST_STEPS = 6;
/** Points of O2 that a worn linkage scatters by, and how many times more than before. */
const MATTERS = { o2: 0.3, ratio: 1.6 };
/** Points of O2, standard deviation of a difference of two readings (common practice, no source): less is luck, no tighter linkage. */
const REPEATS = 0.14;

interface Halves {
  readonly lane: VisitedLane;
  readonly steps: number;
  readonly older: readonly number[];
  readonly newer: readonly number[];
}

/**
 * Fires that scatter more than they used to: what each visit found less what the one before left, the newer half of the
 * visits against the older, by the ratio of variances, one-sided. A handful of visits knows its own scatter badly, so the
 * older variance is drawn toward that of the fleet, and the ratio follows F with the fleet's degrees of freedom added
 * (Smyth 2004). One bad reading makes no scatter: it must matter with the value furthest from the middle of all left out, too.
 */
export function scatterGrowth(lanes: readonly VisitedLane[]): Sign[] {
  const tested = lanes.flatMap((lane) => halvesOf(lane) ?? []);
  const before = tested.map(({ older }) => Math.max(varianceOf(older), REPEATS ** 2));
  const freedom = tested.map(({ older }) => older.length - 1);
  const common = commonVariance(before, freedom);
  return tested.map(({ lane: { unit, fuel, fire, visits }, steps, older, newer }, i) => {
    const expected = moderatedVariance(before[i], freedom[i], common);
    const ratio = varianceOf(newer) / expected;
    const [was, is] = [Math.sqrt(expected), Math.sqrt(varianceOf(newer))];
    const withoutWorst = distanceWithoutFurthest(newer, medianOf([...older, ...newer]));
    return {
      unit,
      fuel,
      fire,
      reason: 'scatter_growing',
      pValue: varianceRatioTail(ratio, newer.length - 1, freedom[i] + common.freedom),
      matters: withoutWorst >= MATTERS.o2 && withoutWorst >= MATTERS.ratio * was,
      evidence: scatterGrowing(
        fire,
        fuel,
        Math.sqrt(varianceOf(older)),
        is,
        steps,
        writeDay(visits[visits.length - newer.length].day),
      ),
      readingsUsed: visits.reduce((sum, { readings }) => sum + readings, 0),
    };
  });
}

/** Undefined where the visits are too few. */
function halvesOf(lane: VisitedLane): Halves | undefined {
  const steps = lane.visits
    .slice(1)
    .map(({ foundO2Pct }, i) => foundO2Pct - lane.visits[i].lastO2Pct)
    .filter(Number.isFinite);
  if (steps.length < LEAST_STEPS) return undefined;
  const half = Math.floor(steps.length / 2);
  return { lane, steps: steps.length, older: steps.slice(0, -half), newer: steps.slice(-half) };
}

function varianceOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}

/** Root mean square of the distances from the middle, the furthest left out. */
function distanceWithoutFurthest(values: readonly number[], middle: number): number {
  const kept = values
    .map((value) => (value - middle) ** 2)
    .sort((a, b) => a - b)
    .slice(0, -1);
  return Math.sqrt(kept.reduce((sum, square) => sum + square, 0) / kept.length);
}
