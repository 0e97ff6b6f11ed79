import { type Motion, passTwoBarriers } from '../statistics/first-passage.ts';
import { normalCdf } from '../statistics/normal.ts';
import { gaussLegendre, type Quadrature } from '../statistics/quadrature.ts';

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

/** Rules over the level: the finer one where its uncertainty outweighs what time adds, and the integrand nears a step. */
const SMOOTH = gaussLegendre(12);
const STEEP = gaussLegendre(32);

/** Beyond this many deviations a level is left out of the quadrature, and a band is out of reach. */
const REACH = 5;
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
  const { nodes, weights } = ruleFor(sd, driftSd, state, slope, years);
  const from = Math.max(lower, level - REACH * sd);
  const half = (Math.min(upper, level + REACH * sd) - from) / 2;
  let total = 0;
  let passed = 0;
  for (let i = 0; i < nodes.length; i++) {
    const start = from + half * (1 + nodes[i]);
    const z = (start - level) / sd;
    const weight = weights[i] * Math.exp(-0.5 * z * z);
    const motion: Motion = { drift: state.rate + slope * (start - level), driftSd, diffusion: state.wander };
    total += weight;
    passed += weight * passTwoBarriers(upper - start, start - lower, motion, years);
  }
  return Math.min(1, Math.max(0, 1 - inside + (inside * passed) / total));
}

function isOutOfReach(state: LevelState, { lower, upper }: Band, years: number): boolean {
  const { mean, sd } = levelAt(state, years);
  return mean - lower > OUT_OF_REACH * sd && upper - mean > OUT_OF_REACH * sd;
}

function ruleFor(sd: number, driftSd: number, { wander }: LevelState, slope: number, years: number): Quadrature {
  const added = Math.sqrt(wander * wander * years + driftSd * driftSd * years * years);
  return added > 0.7 * sd * Math.abs(1 + slope * years) ? SMOOTH : STEEP;
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
    (state.rateWander * state.rateWander * years ** 3) / 3;
  return { mean: state.level + state.rate * years, sd: Math.sqrt(Math.max(1e-12, variance)) };
}
