import { atOnce, type Pieces } from '../pieces.ts';

export interface Minimum {
  readonly at: Float64Array;
  readonly value: number;
  /** Whether the gradient vanished within the tolerance before the steps ran out. */
  readonly converged: boolean;
  readonly evaluations: number;
  /** Approximate inverse of the second derivatives at the minimum, row-major. */
  readonly inverseHessian: Float64Array;
}

export interface MinimizeOptions {
  readonly maxSteps: number;
  /** Step of the central differences. */
  readonly difference: number;
  /** Largest component of the gradient at which the search stops. */
  readonly tolerance: number;
  /** Longest step in any one coordinate. */
  readonly longestStep: number;
  /** The search also stops, after a few steps, where the next one promises to gain less than this. */
  readonly leastGain: number;
  /** Differences to one side: half the cost, less exact. */
  readonly oneSided: boolean;
  /** Guess of the inverse of the second derivatives, row-major; the identity, scaled by the first step, when left out. */
  readonly inverseHessian?: Float64Array;
}

type Evaluate = (x: Float64Array) => Pieces<number>;

const DEFAULTS: MinimizeOptions = {
  maxSteps: 60,
  difference: 1e-4,
  tolerance: 1e-3,
  longestStep: 1,
  leastGain: 0,
  oneSided: false,
};

/**
 * Minimum of a smooth function of a few variables: BFGS (Nocedal and Wright, Numerical Optimization, 2nd ed., ch. 6)
 * with central differences and a backtracking line search. Deterministic; never returns a point worse than the start.
 */
export function minimize(
  f: (x: Float64Array) => number,
  start: ArrayLike<number>,
  given: Partial<MinimizeOptions> = {},
): Minimum {
  return atOnce(minimizing(f, start, given));
}

/** The same, an evaluation a piece. */
export function* minimizing(
  f: (x: Float64Array) => number,
  start: ArrayLike<number>,
  given: Partial<MinimizeOptions> = {},
): Pieces<Minimum> {
  const options = { ...DEFAULTS, ...given };
  const n = start.length;
  let evaluations = 0;
  const evaluate = function* (x: Float64Array): Pieces<number> {
    yield;
    evaluations++;
    const value = f(x);
    return Number.isFinite(value) ? value : Number.MAX_VALUE;
  };
  let at: Float64Array = Float64Array.from(start);
  let value = yield* evaluate(at);
  const gradientAt = (x: Float64Array, here: number): Pieces<Float64Array> =>
    differentiate(evaluate, x, options.difference, options.oneSided ? here : undefined);
  let gradient = yield* gradientAt(at, value);
  const inverse = options.inverseHessian?.slice() ?? identity(n);
  let converged = largest(gradient) <= options.tolerance;
  for (let step = 0; step < options.maxSteps && !converged && n > 0; step++) {
    const direction = downhill(inverse, gradient, options.longestStep);
    const next = yield* search(evaluate, at, value, gradient, direction);
    if (!next) {
      if (isIdentity(inverse, n)) break;
      inverse.set(identity(n));
      continue;
    }
    const nextGradient = yield* gradientAt(next.at, next.value);
    updateInverse(inverse, difference(next.at, at), difference(nextGradient, gradient));
    at = next.at;
    value = next.value;
    gradient = nextGradient;
    const settled = step >= TRUSTED_FROM || options.inverseHessian !== undefined;
    converged =
      largest(gradient) <= options.tolerance || (settled && promisedGain(inverse, gradient) < options.leastGain);
  }
  return { at, value, converged, evaluations, inverseHessian: inverse };
}

/** Steps after which the inverse of the second derivatives is worth believing. */
const TRUSTED_FROM = 6;

/** ½ gᵀH⁻¹g, what a full step would gain. */
function promisedGain(inverse: Float64Array, gradient: Float64Array): number {
  const n = gradient.length;
  let gain = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) gain += gradient[i] * inverse[i * n + j] * gradient[j];
  return 0.5 * gain;
}

/** @param here the value at `at` for one-sided differences */
function* differentiate(f: Evaluate, at: Float64Array, step: number, here?: number): Pieces<Float64Array> {
  const gradient = new Float64Array(at.length);
  for (let i = 0; i < at.length; i++) {
    const moved = at.slice();
    moved[i] = at[i] + step;
    const above = yield* f(moved);
    if (here === undefined) {
      moved[i] = at[i] - step;
      gradient[i] = (above - (yield* f(moved))) / (2 * step);
    } else gradient[i] = (above - here) / step;
  }
  return gradient;
}

/** Quasi-Newton direction, shortened to the longest step; steepest descent where it does not point downhill. */
function downhill(inverse: Float64Array, gradient: Float64Array, longest: number): Float64Array<ArrayBuffer> {
  const n = gradient.length;
  let direction = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) direction[i] -= inverse[i * n + j] * gradient[j];
  if (!(dot(direction, gradient) < 0)) direction = Float64Array.from(gradient, (g) => -g);
  const scale = Math.min(1, longest / Math.max(...direction.map(Math.abs)));
  return direction.map((d) => d * scale);
}

function* search(
  f: Evaluate,
  from: Float64Array,
  value: number,
  gradient: Float64Array,
  direction: Float64Array,
): Pieces<{ at: Float64Array; value: number } | undefined> {
  const slope = dot(gradient, direction);
  for (let share = 1; share > 1e-6; share /= 2.5) {
    const at = from.map((x, i) => x + share * direction[i]);
    const reached = yield* f(at);
    if (reached <= value + 1e-4 * share * slope) return { at, value: reached };
  }
  return undefined;
}

function updateInverse(inverse: Float64Array, s: Float64Array, y: Float64Array): void {
  const n = s.length;
  const curvature = dot(s, y);
  if (!(curvature > 1e-12)) return;
  if (isIdentity(inverse, n)) inverse.set(identity(n).map((h) => (h * curvature) / dot(y, y)));
  const hy = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) hy[i] += inverse[i * n + j] * y[j];
  const factor = (1 + dot(y, hy) / curvature) / curvature;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) inverse[i * n + j] += factor * s[i] * s[j] - (hy[i] * s[j] + s[i] * hy[j]) / curvature;
}

function identity(n: number): Float64Array {
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) matrix[i * n + i] = 1;
  return matrix;
}

const isIdentity = (matrix: Float64Array, n: number): boolean => identity(n).every((value, i) => value === matrix[i]);
const difference = (a: Float64Array, b: Float64Array): Float64Array => a.map((value, i) => value - b[i]);
const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i], 0);
const largest = (a: Float64Array): number => a.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
