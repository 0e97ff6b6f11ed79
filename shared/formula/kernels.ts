/**
 * Loops over one block of rows. Each is small, reads and writes Float64Arrays only, and is always called with the same
 * types, so that it compiles to a tight loop. A quotient by zero and anything infinite is unknown (NaN).
 */
import type { Comparison } from './step.ts';

type A = Float64Array;

export function affine(out: A, a: A, factor: number, offset: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] * factor + offset;
}

export function add(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] + b[i];
}

export function subtract(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] - b[i];
}

export function multiply(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] * b[i];
}

export function divide(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) {
    const divisor = b[i];
    out[i] = divisor === 0 ? Number.NaN : a[i] / divisor;
  }
}

export function reciprocal(out: A, a: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = 1 / a[i];
}

/** out = s a, and out = s a b */
export function scaled(out: A, a: A, s: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = s * a[i];
}
export function scaledProduct(out: A, a: A, b: A, s: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = s * a[i] * b[i];
}

/** out = s a + t b */
export function scaledSum(out: A, a: A, s: number, b: A, t: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = s * a[i] + t * b[i];
}

/** out = s a p + t b q, the chain rule through two arguments */
export function twoProducts(out: A, a: A, p: A, s: number, b: A, q: A, t: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = s * a[i] * p[i] + t * b[i] * q[i];
}

/** out = (s a - t v b) r, the derivative of a quotient v = x / y with r = 1 / y */
export function quotientSlope(out: A, a: A, s: number, v: A, b: A, t: number, r: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = (s * a[i] - t * v[i] * b[i]) * r[i];
}

/** Either side unknown makes the answer unknown. One loop an operator, so that none asks in every row which it is. */
export function compare(out: A, a: A, b: A, operator: Comparison, n: number): void {
  if (operator === '<') less(out, a, b, n);
  else if (operator === '>') less(out, b, a, n);
  else if (operator === '<=') lessOrEqual(out, a, b, n);
  else if (operator === '>=') lessOrEqual(out, b, a, n);
  else if (operator === '==') equal(out, a, b, 1, n);
  else equal(out, a, b, 0, n);
}

function less(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] < b[i] ? 1 : a[i] >= b[i] ? 0 : Number.NaN;
}
function lessOrEqual(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] <= b[i] ? 1 : a[i] > b[i] ? 0 : Number.NaN;
}
function equal(out: A, a: A, b: A, yes: number, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = a[i];
    const y = b[i];
    out[i] = x === y ? yes : x < y || x > y ? 1 - yes : Number.NaN;
  }
}

/** Three-valued: false decides an "and" even beside an unknown, true decides an "or". */
export function and(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] === 0 || b[i] === 0 ? 0 : a[i] * b[i];
}
export function or(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = a[i] === 1 || b[i] === 1 ? 1 : a[i] + b[i];
}
export function not(out: A, a: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = 1 - a[i];
}
export function known(out: A, a: A, n: number): void {
  for (let i = 0; i < n; i++) out[i] = Number.isNaN(a[i]) ? 0 : 1;
}

export function choose(out: A, test: A, yes: A, no: A, n: number): void {
  for (let i = 0; i < n; i++) {
    const t = test[i];
    out[i] = t === 1 ? yes[i] : t === 0 ? no[i] : Number.NaN;
  }
}

export function otherwise(out: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = a[i];
    out[i] = Number.isNaN(x) ? b[i] : x;
  }
}

/** Derivatives follow the branch taken: s a where the test holds, t b elsewhere. */
export function chooseSlope(out: A, test: A, a: A, s: number, b: A, t: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = test[i] === 1 ? s * a[i] : t * b[i];
}
export function otherwiseSlope(out: A, x: A, a: A, s: number, b: A, t: number, n: number): void {
  for (let i = 0; i < n; i++) out[i] = Number.isNaN(x[i]) ? t * b[i] : s * a[i];
}

/** out += (s d u)^2, a share of a variance; an unknown uncertainty leaves the sum unknown. */
export function addVariance(out: A, d: A, s: number, u: A, n: number): void {
  for (let i = 0; i < n; i++) {
    const slope = s * d[i];
    // An input that has no part in this row (another branch was taken) adds nothing, even where it is unknown.
    if (slope !== 0) {
      const share = slope * u[i];
      out[i] += share * share;
    }
  }
}

/** Weight of a: v_b / (v_a + v_b); 1 where only a is known, 0 where only b is; one half where neither has a spread. */
export function weight(out: A, a: A, va: A, b: A, vb: A, n: number): void {
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(b[i])) out[i] = 1;
    else if (Number.isNaN(a[i])) out[i] = 0;
    else {
      const sum = va[i] + vb[i];
      out[i] = sum > 0 ? vb[i] / sum : 0.5;
    }
  }
}

/** out = w a + (1 - w) b, where a weight of 0 or 1 takes one side alone */
export function blend(out: A, w: A, a: A, b: A, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = w[i];
    out[i] = x === 1 ? a[i] : x === 0 ? b[i] : x * a[i] + (1 - x) * b[i];
  }
}
export function blendSlope(out: A, w: A, a: A, s: number, b: A, t: number, n: number): void {
  for (let i = 0; i < n; i++) {
    const x = w[i];
    out[i] = x === 1 ? s * a[i] : x === 0 ? t * b[i] : x * s * a[i] + (1 - x) * t * b[i];
  }
}
