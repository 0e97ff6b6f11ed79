import { exp } from '../quantities/elementary.ts';
import { scaledUpperTail } from './mills-ratio.ts';
import { normalCdf } from './normal.ts';
import { decayByTaylor, LEAST_TABLED, tailByTaylor } from './tail-by-taylor.ts';

/** A Brownian motion whose drift is known only as normal; per unit of time. */
export interface Motion {
  readonly drift: number;
  /** Standard deviation of the drift, 0 where it is known. */
  readonly driftSd: number;
  /** Standard deviation that the motion adds in one unit of time. */
  readonly diffusion: number;
}

/** What a time adds to a place, whatever the drift expected. */
export interface Spread {
  /** Variance that wandering adds, σ²t. */
  readonly wandered: number;
  /** Standard deviation of the place, √(σ²t + s²t²) with s the drift's. */
  readonly total: number;
  /** 1 + s²t/σ²: what an image's weight tilts the drift by, so many times its distance; Infinity where σ is 0. */
  readonly tilt: number;
  /** Terms below exp(−this) M are nothing, for each M that is tabled: the largest, M(−3), is exp(4.5). */
  readonly nothing: number;
}

/** @param digits natural digits of the error that is allowed */
export function spreadOver({ driftSd, diffusion }: Omit<Motion, 'drift'>, time: number, digits = 21): Spread {
  const wandered = diffusion * diffusion * time;
  const drifted = driftSd * time * (driftSd * time);
  return { wandered, total: Math.sqrt(wandered + drifted), tilt: 1 + drifted / wandered, nothing: digits + 9 };
}

/**
 * Chance that the motion has reached a barrier at distance `distance` above it by `time`. With a known drift ν this is the
 * inverse Gaussian distribution function (Schrödinger 1915; Folks and Chhikara 1978, J. R. Statist. Soc. B 40),
 * Φ((νt − a)/σ√t) + exp(2νa/σ²) Φ(−(νt + a)/σ√t); with a normal drift its mean over the drift (Whitmore 1986,
 * Scand. J. Statist. 13): see `reachFirst`. 1 for a distance ≤ 0.
 */
export function passOneBarrier(distance: number, motion: Motion, time: number): number {
  if (distance <= 0) return 1;
  if (time <= 0) return 0;
  return Math.min(1, reachFirst(distance, Number.POSITIVE_INFINITY, motion.drift * time, spreadOver(motion, time), 0));
}

/**
 * Chance that the motion, started between two barriers, has reached either by `time`: the method of images (Darling and
 * Siegert 1953, Ann. Math. Statist. 24; Borodin and Salminen, Handbook of Brownian Motion, 3.15), each image averaged over
 * the drift, to an absolute error below 1e-9.
 * @param above distance to the upper barrier, @param below to the lower one; one of them ≤ 0 gives 1, Infinity is no barrier
 */
export function passTwoBarriers(above: number, below: number, motion: Motion, time: number): number {
  if (above <= 0 || below <= 0) return 1;
  if (time <= 0) return 0;
  const spread = spreadOver(motion, time);
  if (isSurelyOut(above + below, spread)) return 1;
  const travel = motion.drift * time;
  return Math.min(1, reachFirst(above, below, travel, spread, 0) + reachFirst(below, above, -travel, spread, 0));
}

/**
 * Whether nothing is left between barriers this far apart: the slowest mode of the killed motion leaves less than
 * 4/π exp(−π²σ²t/2w²), whatever the drift, which is below 1e-9 beyond σ√t = 2.1 w.
 */
export const isSurelyOut = (width: number, { wandered }: Spread): boolean => wandered > 4.41 * width * width;

/**
 * exp(−weight) times P(up) − P(down, then up) + P(up, down, then up) − ..., the chances of touching barriers in turn, the last
 * one at a distance `above`. The same of the other barrier added to it is the chance of having reached either: a path that
 * touches both in turn n times and no more is in the sum once, since + and − take turns in it.
 *
 * A path that has touched barriers in turn is mirrored at each, so that it must come a longer way δ instead of `above`; by
 * Girsanov's theorem a drift ν weighs it by its end alone. With ν ~ N(m, s²) the paths that end beyond the barrier and those
 * that touched it and came back are, at the barrier, equally dense:
 *
 *     d₀ = (a − mt)/τ,   drop = (δ² − a²)/2σ²t,   P = exp(−d₀²/2 − drop) (M(d) + M(z)),   M(x) = Φ(−x) exp(x²/2)
 *
 * where d and z are the distances, in τ, from the barrier to the centres of the two images, at D and 2a − D from the start;
 * an image at D moves by D s²t/σ² more than the motion. One exponential thus serves two tails, and a factor that is huge
 * never meets a tail that is tiny. Terms fall in size, so that the first one left out bounds the error.
 * @param travel distance that the expected drift goes in the time, toward this barrier
 */
export function reachFirst(above: number, below: number, travel: number, spread: Spread, weight: number): number {
  const { wandered, total, tilt, nothing } = spread;
  const direct = (above - travel) / total;
  if (wandered === 0) return exp(-weight) * (total === 0 ? Number(travel >= above) : normalCdf(-direct));
  const least = weight + 0.5 * direct * direct;
  const back = ((2 * tilt - 1) * above + travel) / total;
  const first = twoTails(least, direct, back, nothing);
  // The nearest path that touches the other barrier before this one: most often there is nothing of it.
  const drop = (2 * below * (above + below)) / wandered;
  const further = (2 * below * tilt) / total;
  const isNothing = least + drop > nothing && direct + further >= 0 && back + further >= 0;
  return isNothing ? first : first - reachAfterOther(above, below, travel, spread, least);
}

/** P(down, then up) − P(up, down, then up) + ... of `reachFirst`. */
function reachAfterOther(
  above: number,
  below: number,
  travel: number,
  { wandered, total, tilt, nothing }: Spread,
  least: number,
): number {
  if (below === Number.POSITIVE_INFINITY) return 0;
  const width = above + below;
  const enough = exp(-nothing);
  let sum = 0;
  for (let touched = 1; touched < 200; touched++) {
    // Whole widths there and back; an odd number of touched barriers begins with the way down.
    const turns = touched >> 1;
    const isOdd = touched % 2 === 1;
    const image = -2 * turns * width - (isOdd ? 2 * below : 0);
    const mirrored = 2 * above - image;
    const drop = (-0.5 * image * mirrored) / wandered;
    const d = (above - image * tilt - travel) / total;
    const z = (mirrored * tilt - above + travel) / total;
    const term = twoTails(least + drop, d, z, nothing);
    sum += isOdd ? term : -term;
    if (term < enough) break;
  }
  return sum;
}

/** exp(−exponent) (M(d) + M(z)), M(x) = Φ(−x) exp(x²/2). */
function twoTails(exponent: number, d: number, z: number, nothing: number): number {
  if (d < LEAST_TABLED || z < LEAST_TABLED) return oneTail(exponent, d, nothing) + oneTail(exponent, z, nothing);
  return exponent > nothing ? 0 : decayByTaylor(exponent) * (tailByTaylor(d) + tailByTaylor(z));
}

/** exp(−exponent) M(x), where one is huge and the other tiny. */
function oneTail(exponent: number, x: number, nothing: number): number {
  const small = exponent > nothing ? 0 : exp(-exponent) * scaledUpperTail(Math.abs(x));
  if (x >= 0) return small;
  const whole = exponent - 0.5 * x * x;
  return whole > nothing ? 0 : exp(-whole) - small;
}
