import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import { copyLanes, type LaneStates } from './fit-fleet.ts';
import type { FleetProgram } from './fleet-program.ts';
import type { LaneSeries } from './lane-series.ts';
import type { SharedEffects } from './shared-effects.ts';
import type { Spread } from './spread.ts';

/** Lane states with the prior of the rate that went into them: what was believed before the lane's own readings. */
export interface LooseStates extends LaneStates {
  readonly priorRate: Float64Array;
  readonly priorRateVariance: Float64Array;
  /**
   * How far below and above the rate the ends of its 95 % interval lie, over where a normal with its variance has them: 1, but
   * for a lane whose rate may have changed or not.
   */
  readonly rateBelow: Float64Array;
  readonly rateAbove: Float64Array;
}

/** Degrees of freedom of the rates about their class: four, the usual choice for a robust analysis (Lange et al. 1989). */
const FREEDOM = 4;
/** The weight settles to three digits within these. */
const ROUNDS = 12;

/**
 * Rates of units lie about their class's mean with a heavy tail (Student's t), not normally: a worn linkage or a clogging
 * filter drifts at many times the class's spread, and a normal prior would draw it back and be too sure of it. The t is a
 * normal whose variance is divided by a weight; the weight of each lane is found by the EM iteration of Lange, Little and
 * Taylor (1989), J. Am. Stat. Assoc. 84, 881-896, and never taken above one, so that units like their class stay as they are.
 * Level, rate and variances follow by Bayes' rule for the pair, the other lanes and shared effects held.
 */
export function loosenRates(
  states: LaneStates,
  program: FleetProgram,
  spread: Spread,
  effects: SharedEffects,
  series: LaneSeries,
): LooseStates {
  const loose: LooseStates = {
    ...copyLanes(states),
    priorRate: new Float64Array(states.level.length),
    priorRateVariance: new Float64Array(states.level.length),
    rateBelow: new Float64Array(states.level.length).fill(1),
    rateAbove: new Float64Array(states.level.length).fill(1),
  };
  for (let unit = 0; unit < program.units; unit++) {
    for (let lane = program.unitLanes[unit]; lane < program.unitLanes[unit + 1]; lane++) {
      const years = (series.to[lane] - series.from[lane]) / DAYS_PER_YEAR;
      const grown = spread.rateWander * spread.rateWander * Math.max(0, years);
      loose.priorRate[lane] = effects.values[program.columns[program.unitColumns[unit] + program.laneClass[lane]]];
      loose.priorRateVariance[lane] = spread.rate * spread.rate + grown;
      loosenLane(loose, lane);
    }
  }
  return loose;
}

function loosenLane(states: LooseStates, lane: number): void {
  const [a, b, c] = [states.levelVariance[lane], states.covariance[lane], states.rateVariance[lane]];
  const [level, rate] = [states.level[lane], states.rate[lane]];
  const [mean, variance] = [states.priorRate[lane], states.priorRateVariance[lane]];
  const determinant = a * c - b * b;
  if (!(determinant > 0 && variance > 0)) return;
  // Precision of the pair, and the part of the rate's that is not the prior's.
  const [p, q] = [c / determinant, -b / determinant];
  const own = a / determinant - 1 / variance;
  if (!(own > 0 && p * own - q * q > 0)) return;
  const [h0, h1] = [p * level + q * rate, q * level + (own + 1 / variance) * rate - mean / variance];
  let weight = 1;
  let found = { level, rate, a, b, c };
  for (let round = 0; round < ROUNDS; round++) {
    const far = ((found.rate - mean) ** 2 + found.c) / variance;
    weight = Math.min(1, (FREEDOM + 1) / (FREEDOM + far));
    const r = own + weight / variance;
    const h = h1 + (weight * mean) / variance;
    const rest = p * r - q * q;
    found = { level: (r * h0 - q * h) / rest, rate: (p * h - q * h0) / rest, a: r / rest, b: -q / rest, c: p / rest };
  }
  states.level[lane] = found.level;
  states.rate[lane] = found.rate;
  states.levelVariance[lane] = found.a;
  states.covariance[lane] = found.b;
  states.rateVariance[lane] = found.c;
  states.priorRateVariance[lane] = variance / weight;
  states.ownWeight[lane] = Math.min(1, Math.max(0, 1 - (found.c * weight) / variance));
}
