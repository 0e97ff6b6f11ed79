import { exp } from '../quantities/elementary.ts';
import { scaledUpperTail } from './mills-ratio.ts';

/**
 * M(x) = Φ(−x) exp(x²/2) and exp(−x) without a division, for quadratures that ask for nothing else: Taylor's polynomials of
 * degree 7 about the nearest of places 1/16 apart, which are made when the program begins.
 *
 * M(x) = ∫₀^∞ exp(−xs − s²/2) ds/√2π, so that M' = xM − 1/√2π, M⁽ⁿ⁺¹⁾ = x M⁽ⁿ⁾ + n M⁽ⁿ⁻¹⁾, and |M⁽⁸⁾| falls with x. What is left out is
 * at most |M⁽⁸⁾| h⁸/8! with h = 1/32: for x ≥ 0 that is 52.5 × 9.1e-13/40320 = 1.2e-15, and at −3, where
 * M⁽⁸⁾ ≤ exp(9/2) E(3 + Z)⁸ = 90 × 47868, it is 1e-10, of an M of 90. Of exp it is 2.3e-17 of the value.
 */
const STEPS = 16;
const TERMS = 8;

/** M is tabled from here on, and exact functions are taken beyond the end. */
export const LEAST_TABLED = -3;
const LAST_TABLED = 12;
/** Places are numbered from −3 − 1/2 of a step, so that cutting off rounds. */
const SHIFT = -LEAST_TABLED * STEPS + 0.5;
const TAILS = tailTable();

/** M(x) for x ≥ `LEAST_TABLED`. */
export function tailByTaylor(x: number): number {
  if (!(x < LAST_TABLED)) return scaledUpperTail(x);
  const place = (x * STEPS + SHIFT) | 0;
  const h = x - (place / STEPS + LEAST_TABLED);
  const at = place * TERMS;
  return (
    TAILS[at] +
    h *
      (TAILS[at + 1] +
        h *
          (TAILS[at + 2] +
            h * (TAILS[at + 3] + h * (TAILS[at + 4] + h * (TAILS[at + 5] + h * (TAILS[at + 6] + h * TAILS[at + 7]))))))
  );
}

const LARGEST_DECAY = 40;
const DECAYS = Float64Array.from({ length: LARGEST_DECAY * STEPS + 1 }, (_, place) => exp(-place / STEPS));

/** exp(−x) for x ≥ 0; 0 beyond 40, where it is below 1e-17. */
export function decayByTaylor(x: number): number {
  if (!(x < LARGEST_DECAY)) return 0;
  const place = (x * STEPS + 0.5) | 0;
  const h = place / STEPS - x;
  const series = 1 + h * (1 + h * (1 / 2 + h * (1 / 6 + h * (1 / 24 + h * (1 / 120 + h * (1 / 720 + h / 5040))))));
  return DECAYS[place] * series;
}

/** Terms of a sum of tails, as many as `count` says. */
export interface Tails {
  readonly weight: Float64Array;
  readonly exponent: Float64Array;
  readonly d: Float64Array;
  readonly z: Float64Array;
}

/** Σ weight exp(−exponent) (M(d) + M(z)): in one place, since a number that a function gives back costs as much as a tail. */
export function sumOfTails({ weight, exponent, d, z }: Tails, count: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++)
    sum += weight[i] * decayByTaylor(exponent[i]) * (tailByTaylor(d[i]) + tailByTaylor(z[i]));
  return sum;
}

function tailTable(): Float64Array {
  const places = (LAST_TABLED - LEAST_TABLED) * STEPS + 1;
  const table = new Float64Array(places * TERMS);
  for (let place = 0; place < places; place++) {
    const x = place / STEPS + LEAST_TABLED;
    let before = x >= 0 ? scaledUpperTail(x) : exp(0.5 * x * x) - scaledUpperTail(-x);
    let derivative = x * before - 1 / Math.sqrt(2 * Math.PI);
    let factorial = 1;
    for (let n = 0; n < TERMS; n++) {
      table[place * TERMS + n] = before / factorial;
      [before, derivative] = [derivative, x * derivative + (n + 1) * before];
      factorial *= n + 1;
    }
  }
  return table;
}
