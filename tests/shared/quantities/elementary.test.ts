// biome-ignore-all lint/suspicious/noApproximativeNumericConstant: the digits are the check, so they come from outside
import libraryExp from '@stdlib/math-base-special-exp';
import { describe, expect, test } from 'vitest';
import { cos, exp, ln, log10, power } from '../../../shared/quantities/elementary.ts';
import { seededRandom } from '../../verify/simulate-fleet.ts';

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

  test('exp has the library’s bits: near zero, over its whole range, at its seams and beyond', () => {
    const random = seededRandom(3);
    const places = [0, -0, 1e-9, -1e-9, 1 / 2 ** 28, -1 / 2 ** 28, 700, -700, 709.9, -745.2, Number.NaN, 1 / 0, -1 / 0];
    for (let k = -1009; k <= 1009; k++)
      for (const share of [0, 0.5])
        for (const off of [-1e-13, 0, 1e-13]) places.push((k + share) * Math.LN2 * (1 + off));
    for (let i = 0; i < 200_000; i++) places.push((random() - 0.5) * [1500, 80, 2][i % 3]);
    expect(places.filter((x) => !Object.is(exp(x), libraryExp(x)))).toEqual([]);
  });

  test('keep the corners', () => {
    expect([exp(Number.NaN), ln(-1), power(-1, 0.5)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
    expect([ln(0), exp(-800), exp(800), power(0, 2)]).toEqual([-Infinity, 0, Infinity, 0]);
  });
});
