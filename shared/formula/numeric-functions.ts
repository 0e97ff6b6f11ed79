import { exp, ln, log10, power as raise } from '../quantities/elementary.ts';
import type { NumericFunction } from './step.ts';

/** A function of one number with its slope. Either may be NaN; an infinite value becomes unknown. */
export function ofOne(
  key: string,
  monotone: boolean,
  value: (x: number) => number,
  slope: (x: number, y: number) => number,
  more: Pick<NumericFunction, 'monotoneFromZero' | 'neverNegative'> = {},
): NumericFunction {
  return {
    key,
    ...more,
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

const always = (): boolean => true;

export const EXP = ofOne('exp', true, exp, (_, y) => y, { neverNegative: always });
export const LOG10 = ofOne('log10', true, log10, (x) => 1 / (x * Math.LN10));
export const SQRT = ofOne('sqrt', true, Math.sqrt, (_, y) => 0.5 / y, { neverNegative: always });
export const ABS = ofOne('abs', false, Math.abs, (x) => Math.sign(x), {
  monotoneFromZero: true,
  neverNegative: always,
});
/** A step has no slope worth carrying: the uncertainty is that of what was rounded. */
export const ROUND = ofOne('round', true, Math.round, () => 1);
export const FLOOR = ofOne('floor', true, Math.floor, () => 1);
export const CEIL = ofOne('ceil', true, Math.ceil, () => 1);
export const REMAINDER = ofTwo('remainder', [false, false], (x, y) => x % y, [() => 1, (x, y) => -Math.trunc(x / y)]);

/*
 * Those below stand in every derivation and are loops of their own: a loop that is handed its function cannot have it
 * built in, and then costs several times as much.
 */

export const LN: NumericFunction = {
  key: 'ln',
  monotone: [true],
  values(out, [a], n) {
    for (let i = 0; i < n; i++) out[i] = a[i] > 0 ? ln(a[i]) : Number.NaN;
  },
  withPartials(out, [p], [a], n) {
    for (let i = 0; i < n; i++) {
      out[i] = a[i] > 0 ? ln(a[i]) : Number.NaN;
      p[i] = 1 / a[i];
    }
  },
};

export const MIN: NumericFunction = {
  key: 'min',
  neverNegative: (args) => args.every(Boolean),
  monotone: [true, true],
  values(out, [a, b], n) {
    for (let i = 0; i < n; i++) out[i] = a[i] <= b[i] ? a[i] : b[i] <= a[i] ? b[i] : Number.NaN;
  },
  withPartials(out, [p, q], [a, b], n) {
    for (let i = 0; i < n; i++) {
      const first = a[i] <= b[i];
      out[i] = first ? a[i] : b[i] <= a[i] ? b[i] : Number.NaN;
      p[i] = first ? 1 : 0;
      q[i] = first ? 0 : 1;
    }
  },
};

export const MAX: NumericFunction = {
  key: 'max',
  neverNegative: (args) => args.some(Boolean),
  monotone: [true, true],
  values(out, [a, b], n) {
    for (let i = 0; i < n; i++) out[i] = a[i] >= b[i] ? a[i] : b[i] >= a[i] ? b[i] : Number.NaN;
  },
  withPartials(out, [p, q], [a, b], n) {
    for (let i = 0; i < n; i++) {
      const first = a[i] >= b[i];
      out[i] = first ? a[i] : b[i] >= a[i] ? b[i] : Number.NaN;
      p[i] = first ? 1 : 0;
      q[i] = first ? 0 : 1;
    }
  },
};

/** The value where it lies within two limits, which are constants: they have no slope, and ride along as helpers. */
export const WITHIN: NumericFunction = {
  key: 'within',
  helpers: 2,
  monotone: [true],
  values(out, [a, lowest, highest], n) {
    for (let i = 0; i < n; i++) out[i] = a[i] >= lowest[i] && a[i] <= highest[i] ? a[i] : Number.NaN;
  },
  withPartials(out, [p], [a, lowest, highest], n) {
    for (let i = 0; i < n; i++) out[i] = a[i] >= lowest[i] && a[i] <= highest[i] ? a[i] : Number.NaN;
    p.fill(1, 0, n);
  },
};

/** Exponents of 0, 1/2 and 1 are the usual ones (density exponents), and powers are slow. */
function power(x: number, y: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  if (y === 1) return x;
  if (y === 0) return 1;
  return finite(y === 0.5 ? Math.sqrt(x) : raise(x, y));
}

export const POWER: NumericFunction = {
  key: 'power',
  monotoneFromZero: true,
  neverNegative: ([base]) => base,
  monotone: [false, false],
  values(out, [a, b], n) {
    for (let i = 0; i < n; i++) out[i] = power(a[i], b[i]);
  },
  withPartials(out, [p, q], [a, b], n) {
    for (let i = 0; i < n; i++) {
      const x = a[i];
      const y = b[i];
      const z = power(x, y);
      out[i] = z;
      p[i] = x === 0 ? y * raise(x, y - 1) : (y * z) / x;
      q[i] = x === 1 || z === 0 ? 0 : z * ln(x);
    }
  },
};
