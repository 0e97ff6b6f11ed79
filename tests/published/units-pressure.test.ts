/** Conversion factors of the trade against published ones. */
import { describe, expect, test } from 'vitest';
import { convert } from '../../shared/quantities/convert.ts';

describe('NIST SP 811 (from memory) and many secondary places', () => {
  test.each([
    // Conventional inch of water: 1000 kg/m3, 9.80665 m/s2. At 39.2 °F it is 249.082 Pa, at 60 °F 248.84; we follow the conventional one.
    [1, 'inwc', 'Pa', 249.08891, 5],
    [1, 'mmwc', 'Pa', 9.80665, 8],
    [1, 'psi', 'Pa', 6894.757, 3],
    [1, 'psi', 'inwc', 27.68, 2],
    [1, 'inhg', 'Pa', 3386.389, 3],
    [1, 'mmhg', 'Pa', 133.3224, 4],
    [1, 'atm', 'Pa', 101_325, 8],
    [3.5, 'inwc', 'Pa', 871.8, 1],
    [7, 'inwc', 'Pa', 1743.6, 1],
    [14, 'inwc', 'Pa', 3487.2, 1],
    [20, 'mbar', 'inwc', 8.029, 3],
    [21, 'mbar', 'inwc', 8.431, 3],
    [37, 'mbar', 'inwc', 14.854, 3],
    [7, 'inwc', 'mbar', 17.4, 1],
    [1, 'MMBtu', 'kWh', 293.07, 2],
    [1, 'therm', 'kWh', 29.31, 2],
    [1, 'MMBtu', 'therm', 10, 10],
    [1, 'MMBtu', 'GJ', 1.05506, 5],
    [1, 'btuh', 'W', 0.29307, 5],
    [212, 'degF', 'Cel', 100, 10],
    [-40, 'degF', 'Cel', -40, 10],
    [0, 'Cel', 'K', 273.15, 10],
  ])('%s %s in %s is %s', (value, from, to, expected, digits) => {
    expect(convert(value, from, to)).toBeCloseTo(expected, digits);
  });
});

test('running supply not more than 1 in. w.c. below static: 9.9 allows 8.9 (common practice, no source)', () => {
  expect(convert(9.9, 'inwc', 'Pa') - convert(8.9, 'inwc', 'Pa')).toBeCloseTo(249.08891, 8);
});

test('an unknown unit, or two that measure different things, is a programming error', () => {
  expect(() => convert(1, 'inwc', 'Cel')).toThrow(RangeError);
  expect(() => convert(1, 'cubits', 'm')).toThrow(RangeError);
});
