import { exp } from '../quantities/elementary.ts';
import { scaledUpperTail } from './mills-ratio.ts';
import { normalCdf } from './normal.ts';

/**
 * Chance that a Brownian motion with drift has reached a barrier at distance `distance` > 0 above it by `time`:
 * the inverse Gaussian distribution function (Schrödinger 1915; Folks and Chhikara 1978, J. R. Statist. Soc. B 40),
 * Φ((νt − a)/(σ√t)) + exp(2νa/σ²) Φ(−(νt + a)/(σ√t)), the second term in scaled form so that it cannot overflow.
 * @param drift toward the barrier is positive, per unit of time
 * @param diffusion standard deviation after one unit of time, ≥ 0
 */
export function passOneBarrier(distance: number, drift: number, diffusion: number, time: number): number {
  if (distance <= 0) return 1;
  if (time <= 0) return 0;
  const spread = diffusion * Math.sqrt(time);
  if (spread === 0) return drift * time >= distance ? 1 : 0;
  return Math.min(1, normalCdf((drift * time - distance) / spread) + reflected(distance, drift * time, spread));
}

/** exp(2νa/σ²) Φ(−(νt + a)/(σ√t)) of a path that drifts `travel` = νt with spread σ√t. */
function reflected(distance: number, travel: number, spread: number): number {
  const far = (travel + distance) / spread;
  if (far < 0) return exp((2 * travel * distance) / (spread * spread)) * normalCdf(-far);
  const near = (travel - distance) / spread;
  return exp(-0.5 * near * near) * scaledUpperTail(far);
}

/**
 * Chance that a Brownian motion with drift, started between two barriers, has reached either by `time`: the method of
 * images (Darling and Siegert 1953, Ann. Math. Statist. 24; Borodin and Salminen, Handbook of Brownian Motion, 3.15).
 * Enough images are summed for an absolute error below 1e-9; where the spread is many times the width, the chance is 1
 * to that accuracy and no images are summed.
 * @param above distance to the upper barrier, @param below to the lower one; one of them ≤ 0 gives 1
 */
export function passTwoBarriers(above: number, below: number, drift: number, diffusion: number, time: number): number {
  if (above <= 0 || below <= 0) return 1;
  if (time <= 0) return 0;
  const spread = diffusion * Math.sqrt(time);
  const travel = drift * time;
  if (spread === 0) return travel >= above || -travel >= below ? 1 : 0;
  const width = above + below;
  if (!Number.isFinite(above)) return passOneBarrier(below, -drift, diffusion, time);
  if (!Number.isFinite(below)) return passOneBarrier(above, drift, diffusion, time);
  // Slowest mode of the killed motion: exp(−π²s²/2w²) of what is left, so nothing is left beyond s = 2.1 w.
  if (spread > 2.1 * width) return 1;
  const images = Math.ceil(0.5 + (6.5 * spread) / (2 * width));
  let inside = 0;
  for (let image = -images; image <= images; image++)
    inside += imageMass(2 * image * width, above, below, travel, spread);
  return Math.min(1, Math.max(0, 1 - inside));
}

/**
 * Mass between the barriers of the image that starts at `shift`, less that of its mirror image in the upper barrier.
 * The weight of a source at z is exp(νz/σ²); with the density it makes exp(−(x−z)²/2s² + νx/σ² − ν²t/2σ²), whose
 * exponent is written by completed squares, so that large drifts do not overflow.
 */
function imageMass(shift: number, above: number, below: number, travel: number, spread: number): number {
  return (
    weightedMass(shift, travel, spread, -below, above) - weightedMass(2 * above - shift, travel, spread, -below, above)
  );
}

/** exp(νz/σ²) [Φ((u − z − νt)/s) − Φ((l − z − νt)/s)] without overflow. */
function weightedMass(source: number, travel: number, spread: number, lower: number, upper: number): number {
  const log = (travel * source) / (spread * spread);
  const low = (lower - source - travel) / spread;
  const high = (upper - source - travel) / spread;
  if (low > 0) return scaledTail(log, low) - scaledTail(log, high);
  if (high < 0) return scaledTail(log, -high) - scaledTail(log, -low);
  return exp(log) * (normalCdf(high) - normalCdf(low));
}

const scaledTail = (log: number, z: number): number => exp(log - 0.5 * z * z) * scaledUpperTail(z);
