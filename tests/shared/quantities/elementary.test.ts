// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: the digits are the check, so they come from outside
import { describe, expect, test } from 'vitest';
import { cos, exp, ln, log10, power } from '../../../shared/quantities/elementary.ts';

/** Digits of the constants: OEIS A001113 (e), A002162 (ln 2), A000796 (pi), A002193 (root of 2); from memory. */
const E = 2.718281828459045;
const LN2 = 0.6931471805599453;

describe('elementary functions', () => {
  test('give the known constants', () => {
    expect(exp(1)).toBeCloseTo(E, 15);
    expect(ln(2)).toBeCloseTo(LN2, 15);
    expect(power(2, 0.5)).toBeCloseTo(1.4142135623730951, 15);
    expect(log10(1000)).toBe(3);
    expect(cos(Math.PI / 3)).toBeCloseTo(0.5, 15);
  });

  test('agree with the engine to a few units in the last place, over the whole range', () => {
    for (let x = -700; x <= 700; x += 0.37) expect(exp(x) / Math.exp(x)).toBeCloseTo(1, 14);
    for (let x = 1e-300; x < 1e300; x *= 7.7) expect(ln(x) - Math.log(x)).toBeLessThanOrEqual(2e-13);
    for (let x = 0.01; x < 1000; x *= 1.1)
      for (const y of [-3, -0.5, 0.25, 1.85, 2, 4]) expect(power(x, y) / x ** y).toBeCloseTo(1, 14);
  });

  test('keep the corners', () => {
    expect([exp(Number.NaN), ln(-1), power(-1, 0.5)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    expect([ln(0), exp(-800), exp(800), power(0, 2)]).toEqual([-Infinity, 0, Infinity, 0]);
  });
});
