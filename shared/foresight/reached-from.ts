import { enoughNodes, OVERHANG } from '../statistics/enough-nodes.ts';
import { reachFirst, type Spread } from '../statistics/first-passage.ts';
import { normalCdf } from '../statistics/normal.ts';
import type { Quadrature } from '../statistics/quadrature.ts';
import { LEAST_TABLED, sumOfTails, type Tails } from '../statistics/tail-by-taylor.ts';

/** How a lane starts: normally about its level, and the further from it, the further it may be expected to travel. */
export interface Start {
  /** Standard deviation of the level. */
  readonly sd: number;
  /** How much further a start one deviation higher is expected to travel in the time. */
  readonly lean: number;
  readonly spread: Spread;
  /** Natural digits of the absolute error that is allowed. */
  readonly digits: number;
}

/** A start and what it has before it; d and b of `reachedFrom` are d₀ − kz and b₀ − cz. */
interface Side extends Start {
  readonly above: number;
  readonly below: number;
  readonly travel: number;
  readonly d0: number;
  readonly k: number;
  readonly b0: number;
  readonly c: number;
}

/**
 * Chance of starting between two barriers and reaching the one above, as `reachFirst` counts it, over a normal start z in
 * standard deviations. With its d = d₀ − kz and the mirrored image's b = b₀ − cz, what is integrated obeys
 *
 *     φ(z) P ≤ 2 φ(0) exp(bound),   bound = −z²/2 + max(−d²/2 where d > 0, b²/2 − d²/2 where b < 0),
 *
 * since M(x) ≤ 1/2 for x ≥ 0 and M(x) ≤ exp(x²/2); and it is at most exp((1 + k²)v²/2) times as much at z + iv, since
 * |M(x + iy)| ≤ M(x). The first says from where the barrier can be reached at all, both say how many nodes it takes.
 * @param travel distance toward the barrier that a start at the level is expected to go
 */
export function reachedFrom(above: number, below: number, travel: number, start: Start): number {
  const { sd, lean, spread, digits } = start;
  const { total, tilt } = spread;
  const inner = 2 * tilt - 1;
  const d0 = (above - travel) / total;
  const k = (sd + lean) / total;
  const b0 = (inner * above + travel) / total;
  const c = (inner * sd - lean) / total;
  const cut = 2 * (digits + 2);
  const reach = Math.sqrt(cut);
  let from = Math.max(-below / sd, -reach);
  let to = Math.min(above / sd, reach);
  const least = Math.min(0, b0 - c * from, b0 - c * to);
  // Where z² + d² is below this: d falls with z, or rises where the lean is backward.
  const within = cut + least * least;
  const square = 1 + k * k;
  const root = Math.sqrt(within * square - d0 * d0);
  if (!(root > 0) && d0 > 0) return 0;
  if (d0 - k * from > 0) from = Math.max(from, (d0 * k - root) / square);
  if (d0 - k * to > 0) to = Math.min(to, (d0 * k + root) / square);
  if (!(from < to)) return 0;
  return overStarts({ sd, lean, spread, digits, above, below, travel, d0, k, b0, c }, from, to);
}

/** By as many nodes as it takes; by halves where those would be too many. */
function overStarts(side: Side, from: number, to: number): number {
  const { digits, k } = side;
  const half = (to - from) / 2;
  const middle = from + half;
  const needed = digits + 2 + highestBound(side, from - OVERHANG * half, to + OVERHANG * half);
  if (needed <= 0) return 0;
  const rule = enoughNodes(half * Math.sqrt(1 + k * k), needed);
  if (!rule)
    return isCertain(side, from, to)
      ? normalCdf(to) - normalCdf(from)
      : overStarts(side, from, middle) + overStarts(side, middle, to);
  return (sumOver(rule, side, middle, half) * half) / Math.sqrt(2 * Math.PI);
}

/** Terms that are summed at once; what a start may add to them is far less than half. */
const MOST_TERMS = 512;
const TERMS: Tails = {
  weight: new Float64Array(MOST_TERMS),
  exponent: new Float64Array(MOST_TERMS),
  d: new Float64Array(MOST_TERMS),
  z: new Float64Array(MOST_TERMS),
};

/** The sum of `reachFirst` over the nodes; its terms are written out, to be summed at once where their tails are tabled. */
function sumOver({ nodes, weights }: Quadrature, side: Side, middle: number, half: number): number {
  const { above, below, travel, sd, lean, spread, d0, k, b0, c } = side;
  const { nothing, wandered, tilt, total } = spread;
  const width = above + below;
  const { weight, exponent, d, z } = TERMS;
  let count = 0;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const start = middle + half * nodes[i];
    const direct = d0 - k * start;
    const back = b0 - c * start;
    if (direct < LEAST_TABLED || back < LEAST_TABLED) {
      const [up, down] = [above - sd * start, below + sd * start];
      sum += weights[i] * reachFirst(up, down, travel + lean * start, spread, 0.5 * start * start);
      continue;
    }
    const least = 0.5 * (start * start + direct * direct);
    let drop = 0;
    let image = 0;
    // The images of one start are ever further away, so that their tails are tabled too.
    for (let touched = 0; least + drop <= nothing && touched < MOST_TERMS / 2; ) {
      weight[count] = touched % 2 === 0 ? weights[i] : -weights[i];
      exponent[count] = least + drop;
      d[count] = direct + (image * tilt) / total;
      z[count] = back + (image * tilt) / total;
      count++;
      touched++;
      image = 2 * (touched >> 1) * width + (touched % 2 === 0 ? 0 : 2 * (below + sd * start));
      drop = (image * (2 * (above - sd * start) + image)) / (2 * wandered);
    }
    if (count > MOST_TERMS / 2) {
      sum += sumOfTails(TERMS, count);
      count = 0;
    }
  }
  return sum + sumOfTails(TERMS, count);
}

/** The largest value of the bound between two starts: of parabolas, at an end or at a vertex. */
function highestBound(side: Side, from: number, to: number): number {
  const { d0, k, b0, c, below, sd } = side;
  const boundAt = (place: number): number => {
    const z = Math.min(to, Math.max(from, place));
    const d = d0 - k * z;
    const b = b0 - c * z;
    const held = d > 0 ? -d * d : 0;
    return 0.5 * ((b < 0 ? Math.max(held, b * b - d * d) : held) - z * z);
  };
  const square = 1 + k * k;
  const curve = square - c * c;
  const vertex = curve > 0 ? (d0 * k - b0 * c) / curve : from;
  const highest = Math.max(boundAt(from), boundAt(to), boundAt(d0 > 0 ? (d0 * k) / square : 0), boundAt(vertex));
  return below + sd * from < 0 ? Math.max(highest, highestBeyondOther(side, from)) : highest;
}

/**
 * The same of what touches the other barrier first, P(down, then up), continued to starts beyond that barrier, where it
 * alone grows: −z²/2 − d²/2 − drop + max(0, d′²/2 where d′ < 0, b′²/2 where b′ < 0), with its d′ = d′₀ + cz, its b′ = b′₀ − d and
 * its drop, which falls to 0 at the barrier by g for each z.
 */
function highestBeyondOther({ above, below, sd, spread, d0, k, c }: Side, from: number): number {
  const { wandered, tilt, total } = spread;
  const to = -below / sd;
  const g = (2 * sd * (above + below)) / wandered;
  const further = d0 + (2 * below * tilt) / total;
  const mirrored = (2 * (above + below) * tilt) / total;
  const boundAt = (place: number): number => {
    const z = Math.min(to, Math.max(from, place));
    const d = d0 - k * z;
    const after = Math.min(0, further + c * z, mirrored - d);
    return 0.5 * (after * after - d * d - z * z) - g * (z + below / sd);
  };
  const square = 1 + k * k;
  const curve = square - c * c;
  const vertex = curve > 0 ? (d0 * k - g + c * further) / curve : from;
  return Math.max(boundAt(from), boundAt((d0 * k - g) / square), boundAt(vertex), boundAt(k * mirrored - g));
}

/** Whether every such start reaches the barrier above and none the one below, to the digits asked for. */
function isCertain({ below, travel, sd, lean, spread, digits, d0, k }: Side, from: number, to: number): boolean {
  const reach = Math.sqrt(2 * (digits + 2));
  const { total, tilt } = spread;
  return [from, to].every((z) => {
    const [room, away] = [below + sd * z, travel + lean * z];
    return d0 - k * z < -reach && room + away > reach * total && (2 * tilt - 1) * room > away;
  });
}
