import type { NumericFunction } from './step.ts';

/** A function of one number with its slope. Either may be NaN; an infinite value becomes unknown. */
export function ofOne(
  key: string,
  monotone: boolean,
  value: (x: number) => number,
  slope: (x: number, y: number) => number,
): NumericFunction {
  return {
    key,
    monotone: [monotone],
    values(out, [a], n) {
      for (let i = 0; i < n; i++) out[i] = finite(value(a[i]));
    },
    withPartials(out, [p], [a], n) {
      for (let i = 0; i < n; i++) {
        const y = finite(value(a[i]));
        out[i] = y;
        p[i] = slope(a[i], y);
      }
    },
  };
}

/** A function of two numbers with its two slopes. */
export function ofTwo(
  key: string,
  monotone: readonly [boolean, boolean],
  value: (x: number, y: number) => number,
  slopes: readonly [(x: number, y: number, z: number) => number, (x: number, y: number, z: number) => number],
): NumericFunction {
  return {
    key,
    monotone,
    values(out, [a, b], n) {
      for (let i = 0; i < n; i++) out[i] = finite(value(a[i], b[i]));
    },
    withPartials(out, [p, q], [a, b], n) {
      for (let i = 0; i < n; i++) {
        const z = finite(value(a[i], b[i]));
        out[i] = z;
        p[i] = slopes[0](a[i], b[i], z);
        q[i] = slopes[1](a[i], b[i], z);
      }
    },
  };
}

const finite = (x: number): number => (Number.isFinite(x) ? x : Number.NaN);

const smaller = (x: number, y: number): number => (x <= y ? x : y <= x ? y : Number.NaN);
const greater = (x: number, y: number): number => (x >= y ? x : y >= x ? y : Number.NaN);

export const EXP = ofOne('exp', true, Math.exp, (_, y) => y);
export const LN = ofOne('ln', true, Math.log, (x) => 1 / x);
export const LOG10 = ofOne('log10', true, Math.log10, (x) => 1 / (x * Math.LN10));
export const SQRT = ofOne('sqrt', true, Math.sqrt, (_, y) => 0.5 / y);
export const ABS = ofOne('abs', false, Math.abs, (x) => Math.sign(x));
/** A step has no slope worth carrying: the uncertainty is that of what was rounded. */
export const ROUND = ofOne('round', true, Math.round, () => 1);
export const FLOOR = ofOne('floor', true, Math.floor, () => 1);
export const CEIL = ofOne('ceil', true, Math.ceil, () => 1);
export const MIN = ofTwo('min', [true, true], smaller, [(x, y) => (x <= y ? 1 : 0), (x, y) => (x <= y ? 0 : 1)]);
export const MAX = ofTwo('max', [true, true], greater, [(x, y) => (x >= y ? 1 : 0), (x, y) => (x >= y ? 0 : 1)]);
export const REMAINDER = ofTwo('remainder', [false, false], (x, y) => x % y, [() => 1, (x, y) => -Math.trunc(x / y)]);
export const POWER = ofTwo('power', [false, false], (x, y) => x ** y, [
  (x, y, z) => (x === 0 ? y * x ** (y - 1) : (y * z) / x),
  (x, _, z) => (z === 0 ? 0 : z * Math.log(x)),
]);
