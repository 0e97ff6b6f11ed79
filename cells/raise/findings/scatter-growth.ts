import { scatterGrowing } from '../../../shared/messages/raise-signs.ts';
import { writeDay } from '../../../shared/quantities/dates.ts';
import { medianOf } from '../../../shared/statistics/median-of.ts';
import { studentCdf } from '../../../shared/statistics/student.ts';
import type { VisitedLane } from './lane-visits.ts';
import type { Sign } from './sign.ts';

const LEAST_STEPS = 10;
/** Points of O2 that a worn linkage scatters by, and how many times more than before. */
const MATTERS = { o2: 0.3, ratio: 1.6 };
/** Points of O2, standard deviation of a difference of two readings (common practice, no source). */
const REPEATS = 0.14;

/**
 * Whether a fire scatters more than it used to: what each visit found less what the one before left, the newer half
 * against the older, by the ratio of variances, one-sided. Of each half the value furthest from its median is left out, so
 * that one bad reading makes no scatter. With equal halves F has equal degrees of freedom d, and then
 * sqrt(d)/2 (sqrt(F) - 1/sqrt(F)) follows Student's t with d (Cacoullos, JASA 60 (1965) 528). Undefined where the visits are too few.
 */
export function scatterGrowth({ unit, fuel, fire, visits }: VisitedLane): Sign | undefined {
  const steps = visits
    .slice(1)
    .map(({ foundO2Pct }, i) => foundO2Pct - visits[i].lastO2Pct)
    .filter(Number.isFinite);
  if (steps.length < LEAST_STEPS) return undefined;
  const half = Math.floor(steps.length / 2);
  const [older, newer] = [steps.slice(0, half), steps.slice(-half)].map(spreadOf);
  if (!Number.isFinite(older + newer)) return undefined;
  const freedom = half - 2;
  // Two readings of one flue differ by this much; less is luck, not a tighter linkage.
  const ratio = Math.max(newer, REPEATS) / Math.max(older, REPEATS);
  return {
    unit,
    fuel,
    fire,
    reason: 'scatter_growing',
    pValue: 1 - studentCdf((Math.sqrt(freedom) / 2) * (ratio - 1 / ratio), freedom),
    matters: newer >= MATTERS.o2 && ratio >= MATTERS.ratio,
    evidence: scatterGrowing(fire, fuel, older, newer, steps.length, writeDay(visits[visits.length - half].day)),
    readingsUsed: visits.reduce((sum, { readings }) => sum + readings, 0),
  };
}

/** Standard deviation without the value furthest from the median. */
function spreadOf(values: readonly number[]): number {
  const middle = medianOf(values);
  const kept = values.toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle)).slice(0, -1);
  const mean = kept.reduce((sum, value) => sum + value, 0) / kept.length;
  return Math.sqrt(kept.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (kept.length - 1));
}
