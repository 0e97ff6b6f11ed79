import { exp } from '../quantities/elementary.ts';
import { scaledUpperTail } from './mills-ratio.ts';
import { normalCdf } from './normal.ts';

/** A Brownian motion whose drift is known only as normal; per unit of time. */
export interface Motion {
  readonly drift: number;
  /** Standard deviation of the drift, 0 where it is known. */
  readonly driftSd: number;
  /** Standard deviation that the motion adds in one unit of time. */
  readonly diffusion: number;
}

/** Beyond this many deviations nothing is left of a normal distribution at the accuracy of these functions. */
const NOTHING_LEFT = 7;

/**
 * Chance that the motion has reached a barrier at distance `distance` above it by `time`. With a known drift ν this is the
 * inverse Gaussian distribution function (Schrödinger 1915; Folks and Chhikara 1978, J. R. Statist. Soc. B 40),
 * Φ((νt − a)/σ√t) + exp(2νa/σ²) Φ(−(νt + a)/σ√t); with a normal drift its mean over the drift (Whitmore 1986,
 * Scand. J. Statist. 13), both as images: see `sourceMass`. 1 for a distance ≤ 0.
 */
export function passOneBarrier(distance: number, motion: Motion, time: number): number {
  if (distance <= 0) return 1;
  if (time <= 0) return 0;
  const total = totalSpread(motion, time);
  const travel = motion.drift * time;
  if (distance - Math.max(0, travel) > NOTHING_LEFT * total) return 0;
  if (motion.diffusion === 0) return total === 0 ? Number(travel >= distance) : normalCdf((travel - distance) / total);
  const reached = normalCdf((travel - distance) / total);
  return Math.min(1, reached + sourceMass(2 * distance, motion, time, total, Number.NEGATIVE_INFINITY, distance));
}

/**
 * Chance that the motion, started between two barriers, has reached either by `time`: the method of images (Darling and
 * Siegert 1953, Ann. Math. Statist. 24; Borodin and Salminen, Handbook of Brownian Motion, 3.15), each image averaged over
 * the drift. Enough images are summed for an absolute error below 1e-9.
 * @param above distance to the upper barrier, @param below to the lower one; one of them ≤ 0 gives 1, Infinity is no barrier
 */
export function passTwoBarriers(above: number, below: number, motion: Motion, time: number): number {
  if (above <= 0 || below <= 0) return 1;
  if (time <= 0) return 0;
  const { drift, driftSd, diffusion } = motion;
  const mirrored = { drift: -drift, driftSd, diffusion };
  if (!Number.isFinite(above)) return passOneBarrier(below, mirrored, time);
  if (!Number.isFinite(below)) return passOneBarrier(above, motion, time);
  const spread = diffusion * Math.sqrt(time);
  const width = above + below;
  // A path that reaches both barriers has crossed the whole width back against its own wandering.
  if (width > NOTHING_LEFT * spread)
    return Math.min(1, passOneBarrier(above, motion, time) + passOneBarrier(below, mirrored, time));
  // Slowest mode of the killed motion: exp(−π²s²/2w²) of what is left, so nothing is left beyond s = 2.1 w.
  if (spread > 2.1 * width) return 1;
  const total = totalSpread(motion, time);
  const images = Math.ceil(0.5 + (6.5 * spread) / (2 * width));
  let inside = 0;
  for (let image = -images; image <= images; image++) {
    const shift = 2 * image * width;
    inside +=
      sourceMass(shift, motion, time, total, -below, above) -
      sourceMass(2 * above - shift, motion, time, total, -below, above);
  }
  return Math.min(1, Math.max(0, 1 - inside));
}

/** Standard deviation of the place after `time`. */
function totalSpread({ driftSd, diffusion }: Motion, time: number): number {
  return Math.sqrt(diffusion * diffusion * time + driftSd * driftSd * time * time);
}

/**
 * Mass between two places of an image that starts at z with weight exp(νz/σ²), averaged over ν ~ N(m, s²): the weight
 * tilts the drift to m + s²z/σ² and leaves the factor exp(mz/σ² + s²z²/2σ⁴). Tails are taken in scaled form, so that the
 * factor and the tail, one huge and one tiny, never meet as numbers.
 */
function sourceMass(
  source: number,
  { drift, driftSd, diffusion }: Motion,
  time: number,
  total: number,
  lower: number,
  upper: number,
): number {
  const variance = diffusion * diffusion;
  const tilt = (driftSd * driftSd * source) / variance;
  const log = ((drift + 0.5 * tilt) * source) / variance;
  const center = source + (drift + tilt) * time;
  const low = (lower - center) / total;
  const high = (upper - center) / total;
  if (low > 0) return scaledTail(log, low) - scaledTail(log, high);
  if (high < 0) return scaledTail(log, -high) - scaledTail(log, -low);
  return exp(log) * (normalCdf(high) - normalCdf(low));
}

/** exp(log) Φ(−z) for z ≥ 0. */
function scaledTail(log: number, z: number): number {
  const exponent = log - 0.5 * z * z;
  return exponent < -60 ? 0 : exp(exponent) * scaledUpperTail(z);
}
