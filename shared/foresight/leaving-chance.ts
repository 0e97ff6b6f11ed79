import { exp } from '../quantities/elementary.ts';
import { passTwoBarriers } from '../statistics/first-passage.ts';
import { normalCdf } from '../statistics/normal.ts';
import { gaussHermite, gaussLegendre } from '../statistics/quadrature.ts';

/** A level and its rate on the day of the last visit, as known then; points and years. */
export interface LevelState {
  readonly level: number;
  readonly rate: number;
  readonly levelVariance: number;
  readonly rateVariance: number;
  readonly covariance: number;
  /** Wandering after one year. */
  readonly wander: number;
}

/** Barriers; −Infinity or Infinity where there is none on that side. */
export interface Band {
  readonly lower: number;
  readonly upper: number;
}

const RATES = gaussHermite(9);
const LEVELS = gaussLegendre(12);
/** Beyond this many deviations a level is left out of the quadrature. */
const REACH = 5;

/**
 * Chance of having been outside the band at least once within `years` of the last visit, being outside then included:
 * two-barrier first passage, integrated over the joint normal uncertainty of level and rate by a fixed rule (Gauss-Hermite
 * over the rate, Gauss-Legendre over the level given the rate between the barriers, the mass outside them in closed form).
 */
export function chanceOutWithin(state: LevelState, band: Band, years: number): number {
  const rateSd = Math.sqrt(Math.max(0, state.rateVariance));
  const tilt = rateSd > 0 ? state.covariance / rateSd : 0;
  const levelSd = Math.sqrt(Math.max(1e-12, state.levelVariance - tilt * tilt));
  let chance = 0;
  for (let i = 0; i < RATES.nodes.length; i++) {
    const z = RATES.nodes[i];
    chance +=
      RATES.weights[i] * outGivenRate(state.level + tilt * z, levelSd, state.rate + rateSd * z, state, band, years);
  }
  return Math.min(1, Math.max(0, chance));
}

function outGivenRate(
  mean: number,
  sd: number,
  rate: number,
  { wander }: LevelState,
  { lower, upper }: Band,
  years: number,
): number {
  const inside = normalCdf((upper - mean) / sd) - normalCdf((lower - mean) / sd);
  if (inside < 1e-9 || years <= 0) return 1 - inside;
  const from = Math.max(lower, mean - REACH * sd);
  const to = Math.min(upper, mean + REACH * sd);
  const half = (to - from) / 2;
  let weights = 0;
  let passed = 0;
  for (let i = 0; i < LEVELS.nodes.length; i++) {
    const level = from + half * (1 + LEVELS.nodes[i]);
    const z = (level - mean) / sd;
    const weight = LEVELS.weights[i] * exp(-0.5 * z * z);
    weights += weight;
    passed += weight * passTwoBarriers(upper - level, level - lower, rate, wander, years);
  }
  return 1 - inside + (inside * passed) / weights;
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
    state.wander * state.wander * years;
  return { mean: state.level + state.rate * years, sd: Math.sqrt(Math.max(1e-12, variance)) };
}

/**
 * Years after the last visit at which the chance of having left reaches each share, ascending shares; NaN where it does not
 * within `furthest`. The chance never falls, so a bracketed secant (Illinois) finds it.
 */
export function yearsUntilChance(state: LevelState, band: Band, shares: readonly number[], furthest: number): number[] {
  const chanceAt = (years: number): number => chanceOutWithin(state, band, years);
  const first = chanceAt(0);
  const last = furthest > 0 ? chanceAt(furthest) : first;
  let low = { years: 0, chance: first };
  return shares.map((share) => {
    if (first >= share) return 0;
    if (!(last >= share)) return Number.NaN;
    low = bracket(chanceAt, low, { years: furthest, chance: last }, share);
    return low.years;
  });
}

interface Reached {
  readonly years: number;
  readonly chance: number;
}

const HALF_DAY = 0.5 / 365.25;

function bracket(chanceAt: (years: number) => number, from: Reached, to: Reached, share: number): Reached {
  let low = from;
  let high = to;
  let lowWeight = low.chance - share;
  let highWeight = high.chance - share;
  for (let turn = 0; turn < 40 && high.years - low.years > HALF_DAY; turn++) {
    const blind = turn % 4 === 3;
    const years = blind
      ? (low.years + high.years) / 2
      : (low.years * highWeight - high.years * lowWeight) / (highWeight - lowWeight);
    const chance = chanceAt(years);
    if (Math.abs(chance - share) < 2e-4) return { years, chance };
    if (chance < share) {
      low = { years, chance };
      lowWeight = chance - share;
      highWeight /= 2;
    } else {
      high = { years, chance };
      highWeight = chance - share;
      lowWeight /= 2;
    }
  }
  return high;
}
