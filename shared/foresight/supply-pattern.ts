import { straightLine } from '../statistics/straight-line.ts';
import { studentQuantile } from '../statistics/student.ts';
import type { UnitSupply } from './supply-readings.ts';

/**
 * What the columns fit (common practice, no source): drop grows with static steady, a restriction between (filter, cock,
 * pipe); static and running fall together, the regulator's set point or the utility; static rises alone, a regulator that
 * creeps; neither moves, steady; '' where there are too few readings.
 */
export type SupplyPattern = '' | 'restriction' | 'regulator' | 'creep' | 'steady';

export function supplyPattern({ days, fixed, running, drop }: UnitSupply): SupplyPattern {
  const fixedTrend = trend(days, fixed);
  const runningTrend = trend(days, running);
  const dropTrend = trend(days, drop);
  if (Number.isNaN(fixedTrend) || Number.isNaN(runningTrend)) return '';
  if (dropTrend > 0 && runningTrend < 0) return fixedTrend < 0 ? 'regulator' : 'restriction';
  if (fixedTrend < 0 && runningTrend < 0) return 'regulator';
  if (fixedTrend > 0 && runningTrend === 0) return 'creep';
  return 'steady';
}

/** 1 rising, -1 falling, 0 neither (two-sided 1 %), NaN below five readings. */
function trend(days: readonly number[], values: readonly number[]): number {
  const known = values.map((_, i) => i).filter((i) => Number.isFinite(values[i]));
  if (known.length < 5) return Number.NaN;
  const line = straightLine(
    known.map((i) => days[i]),
    known.map((i) => values[i]),
  );
  return Math.abs(line.t) > studentQuantile(0.995, line.freedom) ? Math.sign(line.t) : 0;
}
