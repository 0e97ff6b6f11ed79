import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { twelveDigits } from '../../../shared/quantities/twelve-digits.ts';

describe('twelve digits', () => {
  test.each<[number, string]>([
    [0, '0'],
    [-0, '0'],
    [5, '5'],
    [-3.5, '-3.5'],
    [0.1 + 0.2, '0.3'],
    [1 / 3, '0.333333333333'],
    [2 / 3, '0.666666666667'],
    [999_999_999_999.96, '1000000000000'],
    [123_456_789_012.5, '123456789013'],
    [123_456_789_012_345, '123456789012000'],
    [1.25e-7, '1.25e-7'],
    [6.02214076e23, '6.02214076e+23'],
    [Number.NaN, ''],
    [Number.POSITIVE_INFINITY, ''],
  ])('%d is written %j', (value, text) => {
    expect(twelveDigits(value)).toBe(text);
  });

  test('the text read back is the number rounded to twelve digits, and no shorter text is', () => {
    const number = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer().map((whole) => whole / 1000),
    );
    fc.assert(
      fc.property(number, (value) => {
        const rounded = Number(value.toPrecision(12));
        expect(twelveDigits(value)).toBe(Object.is(rounded, -0) ? '0' : String(rounded));
      }),
      { numRuns: 5000, seed: 9 },
    );
  });
});
