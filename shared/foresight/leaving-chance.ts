import { ln } from '../quantities/elementary.ts';
import { isSurelyOut, spreadOver } from '../statistics/first-passage.ts';
import { normalCdf } from '../statistics/normal.ts';
import { reachedFrom } from './reached-from.ts';

/** A level and its rate on the day of the last visit, as known then; points and years. */
export interface LevelState {
  readonly level: number;
  readonly rate: number;
  readonly levelVariance: number;
  readonly rateVariance: number;
  readonly covariance: number;
  /** Wandering after one year. */
  readonly wander: number;
  /** Change of the rate after one year. */
  readonly rateWander: number;
}

/** Barriers; −Infinity or Infinity where there is none on that side. */
export interface Band {
  readonly lower: number;
  readonly upper: number;
}

/** Absolute error of a chance that is told. */
const TOLD = 5e-9;
/** A motion that wanders less, in deviations of the level, is taken to wander so much: the quadrature asks for some. */
const LEAST_WANDER = 1e-6;

/**
 * Chance of having been outside the band at least once within `years` of the last visit, being outside then included:
 * two-barrier first passage, integrated over the joint normal uncertainty of level and rate. The rate given the level is
 * integrated in closed form (first-passage.ts), the level by quadrature (reached-from.ts). What the rate may change on the
 * way counts as uncertainty of the rate: s²t/3 gives the level the same variance.
 * @param error absolute
 */
export function chanceOutWithin(state: LevelState, band: Band, years: number, error = TOLD): number {
  const { level, levelVariance, covariance } = state;
  const sd = Math.sqrt(Math.max(1e-12, levelVariance));
  const above = band.upper - level;
  const below = level - band.lower;
  const outside = normalCdf(-above / sd) + normalCdf(-below / sd);
  if (outside > 1 - 1e-9 || years <= 0) return Math.min(1, outside);
  const slope = levelVariance > 0 ? covariance / levelVariance : 0;
  const rateVariance = state.rateVariance - slope * covariance + (state.rateWander ** 2 * years) / 3;
  const diffusion = Math.max(state.wander, (LEAST_WANDER * sd) / Math.sqrt(years));
  const digits = -ln(error);
  const spread = spreadOver({ driftSd: Math.sqrt(Math.max(0, rateVariance)), diffusion }, years, digits);
  if (isSurelyOut(above + below, spread)) return 1;
  const travel = state.rate * years;
  const lean = slope * years * sd;
  if (Number.isNaN(outside + travel + lean + spread.total)) return Number.NaN;
  const start = { sd, lean, spread, digits };
  const inside = reachedFrom(above, below, travel, start) + reachedFrom(below, above, -travel, start);
  return Math.min(1, outside + inside);
}

/** Chance of being outside exactly `years` after the last visit. */
export function chanceOutsideAt(state: LevelState, band: Band, years: number): number {
  const { mean, sd } = levelAt(state, years);
  return normalCdf((band.lower - mean) / sd) + normalCdf((mean - band.upper) / sd);
}

/** Mean and standard deviation of the level `years` after the last visit. */
export function levelAt(state: LevelState, years: number): { mean: number; sd: number } {
  const variance =
    state.levelVariance +
    2 * state.covariance * years +
    state.rateVariance * years * years +
    state.wander * state.wander * years +
    (state.rateWander * state.rateWander * years * years * years) / 3;
  return { mean: state.level + state.rate * years, sd: Math.sqrt(Math.max(1e-12, variance)) };
}
