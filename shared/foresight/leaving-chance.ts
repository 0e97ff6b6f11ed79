import { exp } from '../quantities/elementary.ts';
import { passTwoBarriers } from '../statistics/first-passage.ts';
import { normalCdf } from '../statistics/normal.ts';
import { gaussHermite, gaussLegendre, type Quadrature } from '../statistics/quadrature.ts';

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

/**
 * Rules over the level, the finer the more its uncertainty outweighs what time adds, since the integrand then nears a step;
 * Gauss-Hermite where neither barrier cuts the level's distribution, Gauss-Legendre between the barriers where one does.
 */
const WHOLE_SMOOTH = gaussHermite(5);
const WHOLE = gaussHermite(9);
const CUT = gaussLegendre(10);
const STEEP = gaussLegendre(30);

/** Beyond this many deviations a level is left out of the quadrature, and a band is out of reach. */
const REACH = 4.5;
const OUT_OF_REACH = 6;

/**
 * Chance of having been outside the band at least once within `years` of the last visit, being outside then included:
 * two-barrier first passage, integrated over the joint normal uncertainty of level and rate. The rate given the level is
 * integrated in closed form (first-passage.ts), the level by a fixed Gauss-Legendre rule between the barriers, what lies
 * outside them in closed form. What the rate may change on the way counts as uncertainty of the rate: s²t/3 gives the level
 * the same variance.
 */
export function chanceOutWithin(state: LevelState, band: Band, years: number): number {
  const { level, levelVariance, covariance } = state;
  const { lower, upper } = band;
  if (isOutOfReach(state, band, 0) && isOutOfReach(state, band, years)) return 0;
  const sd = Math.sqrt(Math.max(1e-12, levelVariance));
  const inside = normalCdf((upper - level) / sd) - normalCdf((lower - level) / sd);
  if (inside < 1e-9 || years <= 0) return 1 - Math.max(0, inside);
  const slope = levelVariance > 0 ? covariance / levelVariance : 0;
  const rateVariance = state.rateVariance - slope * covariance + (state.rateWander ** 2 * years) / 3;
  const driftSd = Math.sqrt(Math.max(0, rateVariance));
  const share = addedShare(sd, driftSd, state, slope, years);
  const passed = (start: number): number =>
    passTwoBarriers(
      upper - start,
      start - lower,
      { drift: state.rate + slope * (start - level), driftSd, diffusion: state.wander },
      years,
    );
  const isWhole = lower < level - REACH * sd && upper > level + REACH * sd;
  const mean =
    isWhole && share > 0.5
      ? meanOverAll(passed, level, sd, share > 1 ? WHOLE_SMOOTH : WHOLE)
      : meanBetween(passed, level, sd, band, share > 0.7 ? CUT : STEEP);
  return Math.min(1, Math.max(0, 1 - inside + inside * mean));
}

function meanOverAll(f: (x: number) => number, mean: number, sd: number, { nodes, weights }: Quadrature): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i] * f(mean + sd * nodes[i]);
  return sum;
}

/** Mean of f over the part of a normal distribution that lies between the barriers. */
function meanBetween(
  f: (x: number) => number,
  mean: number,
  sd: number,
  { lower, upper }: Band,
  { nodes, weights }: Quadrature,
): number {
  const from = Math.max(lower, mean - REACH * sd);
  const half = (Math.min(upper, mean + REACH * sd) - from) / 2;
  let total = 0;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const x = from + half * (1 + nodes[i]);
    const z = (x - mean) / sd;
    const weight = weights[i] * exp(-0.5 * z * z);
    total += weight;
    sum += weight * f(x);
  }
  return sum / total;
}

function isOutOfReach(state: LevelState, { lower, upper }: Band, years: number): boolean {
  const { mean, sd } = levelAt(state, years);
  return mean - lower > OUT_OF_REACH * sd && upper - mean > OUT_OF_REACH * sd;
}

/** What time adds to the spread of the level, over the spread that is there at the last visit. */
function addedShare(sd: number, driftSd: number, { wander }: LevelState, slope: number, years: number): number {
  const added = Math.sqrt(wander * wander * years + driftSd * driftSd * years * years);
  return added / (sd * Math.max(1e-9, Math.abs(1 + slope * years)));
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
