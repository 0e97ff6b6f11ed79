import { flueRising } from '../../../shared/messages/raise-signs.ts';
import { DAYS_PER_YEAR, writeDay } from '../../../shared/quantities/dates.ts';
import { regress } from '../../../shared/statistics/regress.ts';
import { studentCdf, studentQuantile } from '../../../shared/statistics/student.ts';
import type { LaneVisit, VisitedLane } from './lane-visits.ts';
import type { Sign } from './sign.ts';

const LEAST_VISITS = 6;
const LEAST_FREEDOM = 3;
/** A rise that costs nobody anything: 40 °F are about one point of efficiency, so 8 °C are a third of one. */
const MATTERS_C = 8;
/** A covariate that hardly moves explains nothing and only eats a degree of freedom. */
const MOVES = { o2: 0.15, air: 3, water: 2 };

/**
 * Whether the flue gets hotter from year to year at the same O2 and the same water or air: least squares of the visit's
 * flue temperature on time, with O2 and return water (else combustion air) as covariates, one-sided t test of the slope.
 * Undefined where the visits are too few to test.
 */
export function flueRise({ unit, fuel, fire, visits }: VisitedLane): Sign | undefined {
  const read = visits.filter(({ flueC, o2Pct }) => Number.isFinite(flueC + o2Pct));
  if (read.length < LEAST_VISITS) return undefined;
  const base = { unit, fuel, fire, reason: 'flue_temperature_rising' as const };
  const readingsUsed = read.reduce((sum, { readings }) => sum + readings, 0);
  // A flue that never stood so much hotter than at its coldest has not risen so much: a test that finds nothing.
  const flues = read.map(({ flueC }) => flueC);
  if (Math.max(...flues) - Math.min(...flues) < MATTERS_C)
    return { ...base, pValue: 1, matters: false, evidence: '', readingsUsed };
  const years = read.map(({ day }) => (day - read[0].day) / DAYS_PER_YEAR);
  const columns = [read.map(() => 1), years, ...covariates(read)];
  if (read.length - columns.length < LEAST_FREEDOM) return undefined;
  const fit = regress(flues, columns);
  const [, slope] = fit.coefficients;
  const [, error] = fit.standardErrors;
  if (!Number.isFinite(slope) || !(error >= 0)) return undefined;
  const span = years[years.length - 1];
  const half = studentQuantile(0.975, fit.freedom) * error;
  return {
    ...base,
    pValue: error > 0 ? 1 - studentCdf(slope / error, fit.freedom) : slope > 0 ? 0 : 1,
    matters: slope * span >= MATTERS_C,
    evidence: flueRising(fire, fuel, slope, slope - half, slope + half, {
      visits: read.length,
      from: writeDay(read[0].day),
      to: writeDay(read[read.length - 1].day),
      lastC: read[read.length - 1].flueC,
    }),
    readingsUsed,
  };
}

function covariates(read: readonly LaneVisit[]): number[][] {
  const column = (of: (visit: LaneVisit) => number, moves: number): number[][] => {
    const values = read.map(of);
    if (!values.every(Number.isFinite)) return [];
    const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
    const apart = values.map((value) => value - middle);
    const sd = Math.sqrt(apart.reduce((sum, value) => sum + value * value, 0) / values.length);
    return sd >= moves ? [apart] : [];
  };
  const water = column(({ returnC }) => returnC, MOVES.water);
  const air = water.length > 0 ? [] : column(({ airC }) => airC, MOVES.air);
  return [...column(({ o2Pct }) => o2Pct, MOVES.o2), ...water, ...air];
}
