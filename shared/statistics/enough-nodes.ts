import { exp, ln } from '../quantities/elementary.ts';
import { gaussLegendre, type Quadrature } from './quadrature.ts';

/** How far the ellipse of the bound reaches beyond the interval, in halves of it: its major half-axis, cosh s, is at most 2. */
export const OVERHANG = 1;

/**
 * The Gauss-Legendre rule on [−1, 1] with as few nodes as keep the error below exp(−digits) M, for an integrand whose
 * continuation obeys |g(u + iv)| ≤ M exp(λ²v²/2) for |u| ≤ 1 + OVERHANG, as normal densities and distribution functions with
 * deviation 1/λ do.
 *
 * Where |g| ≤ M' on the ellipse with foci ±1 whose half-axes add to ρ = e^s, n nodes leave an error of at most
 * (64/15) M' ρ^−2n / (1 − ρ^−2) (Rabinowitz 1969, Commun. ACM 12; Trefethen 2008, SIAM Review 50, theorem 4.5). Its minor
 * half-axis is sinh s, so that ln M' ≤ ln M + λ² sinh²s/2. With k = 4n/λ² the error is below M exp(−gain),
 *
 *     gain = 2n (s − sinh²s/k) + ln(1 − e^−2s) − ln(64/15),
 *
 * largest near sinh 2s = k.
 *
 * @param steepness λ
 * @param digits natural, rounded up to a whole number
 * @returns undefined where it would take more than `MOST` nodes
 */
export function enoughNodes(steepness: number, digits: number): Quadrature | undefined {
  const whole = Math.max(1, Math.ceil(digits));
  if (whole > MOST_DIGITS) return undefined;
  steepest[whole] ??= steepestOf(whole);
  const limits = steepest[whole];
  let count = LEAST;
  while (count <= MOST && limits[count] < steepness) count++;
  if (count > MOST) return undefined;
  rules[count] ??= gaussLegendre(count);
  return rules[count];
}

const LEAST = 3;
const MOST = 40;
/** More than that many nodes can gain. */
const MOST_DIGITS = 120;
const rules: Quadrature[] = [];
/** By digits and number of nodes: the largest λ that they suffice for. */
const steepest: Float64Array[] = [];

function steepestOf(digits: number): Float64Array {
  return Float64Array.from({ length: MOST + 1 }, (_, count) => (count < LEAST ? 0 : largestSteepness(count, digits)));
}

/** The least k that suffices, by bisection of its logarithm: what is gained grows with k. 0 where none does. */
function largestSteepness(count: number, digits: number): number {
  let [low, high] = [-12, 12];
  if (gain(count, exp(high)) < digits) return 0;
  for (let turn = 0; turn < 40; turn++) {
    const middle = (low + high) / 2;
    if (gain(count, exp(middle)) < digits) low = middle;
    else high = middle;
  }
  return Math.sqrt((4 * count) / exp(high));
}

function gain(count: number, k: number): number {
  const s = Math.min(LARGEST_S, 0.5 * ln(k + Math.sqrt(1 + k * k)));
  const sinh = 0.5 * (exp(s) - exp(-s));
  return 2 * count * (s - (sinh * sinh) / k) + ln(1 - exp(-2 * s)) - ln(64 / 15);
}

/** cosh s = 1 + OVERHANG. */
const LARGEST_S = ln(1 + OVERHANG + Math.sqrt((1 + OVERHANG) ** 2 - 1));
