import { type StraightLine, straightLine } from '../statistics/straight-line.ts';
import { studentQuantile } from '../statistics/student.ts';
import type { UnitSupply } from './supply-readings.ts';

/**
 * What the columns fit (common practice, no source): drop grows with static steady, a restriction between (filter, cock,
 * pipe); static and running fall together, the regulator's set point or the utility; static rises alone, a regulator that
 * creeps; several units on one line fall together, the line (see supply-patterns.ts); running strays from reading to reading
 * far more than at other units, a regulator that hunts; neither moves, steady; '' where there are too few readings.
 */
export type SupplyPattern = '' | 'restriction' | 'regulator' | 'creep' | 'shared_line' | 'hunting' | 'steady';

/** Visits at which both pressures were read, below which nothing is said. */
const LEAST_VISITS = 5;

/** A unit's columns by themselves. */
export interface SupplyTrends {
  readonly pattern: SupplyPattern;
  /** Whether the running pressure falls. */
  readonly falls: boolean;
  /** Variances about the straight lines of running pressure and drop, square pascals; NaN below five readings. */
  readonly runningVariance: number;
  readonly dropVariance: number;
  readonly freedom: number;
}

export function supplyTrends({ days, fixed, running, drop }: UnitSupply): SupplyTrends {
  const [ofFixed, ofRunning, ofDrop] = [fixed, running, drop].map((values) => lineThrough(days, values));
  const known = { runningVariance: varianceOf(ofRunning), dropVariance: varianceOf(ofDrop) };
  const freedom = ofRunning && ofDrop ? Math.min(ofRunning.freedom, ofDrop.freedom) : 0;
  const [fixedTrend, runningTrend, dropTrend] = [ofFixed, ofRunning, ofDrop].map(trend);
  return { pattern: patternOf(fixedTrend, runningTrend, dropTrend), falls: runningTrend < 0, ...known, freedom };
}

function patternOf(fixed: number, running: number, drop: number): SupplyPattern {
  if (Number.isNaN(fixed) || Number.isNaN(running)) return '';
  if (drop > 0 && running < 0) return fixed < 0 ? 'regulator' : 'restriction';
  if (fixed < 0 && running < 0) return 'regulator';
  if (fixed > 0 && running === 0) return 'creep';
  return 'steady';
}

function lineThrough(days: readonly number[], values: readonly number[]): StraightLine | undefined {
  const known = values.map((_, i) => i).filter((i) => Number.isFinite(values[i]));
  if (known.length < LEAST_VISITS) return undefined;
  return straightLine(
    known.map((i) => days[i]),
    known.map((i) => values[i]),
  );
}

/** 1 rising, -1 falling, 0 neither (two-sided 1 %), NaN where there are too few readings. */
function trend(line: StraightLine | undefined): number {
  if (!line) return Number.NaN;
  return Math.abs(line.t) > studentQuantile(0.995, line.freedom) ? Math.sign(line.t) : 0;
}

const varianceOf = (line: StraightLine | undefined): number =>
  line ? line.residuals.reduce((sum, residual) => sum + residual * residual, 0) / line.freedom : Number.NaN;
