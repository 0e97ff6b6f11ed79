import { describe, expect, test } from 'vitest';
import { displayedPressure } from '../../../shared/quantities/displayed-pressure.ts';

describe('how a settled pressure unit is shown', () => {
  // 1 kPa = 1000 Pa and 1 mbar = 100 Pa by definition (SI prefixes; 1 bar = 100 000 Pa).
  test.each([
    ['Pa', 'Pa', 1],
    ['kPa', 'kPa', 1000],
    ['mbar', 'mbar', 100],
  ] as const)('%s is called %s and has %d Pa', (code, unit, pascals) => {
    const shown = displayedPressure(code);
    expect(shown.unit).toBe(unit);
    expect(shown.pascals).toBeCloseTo(pascals, 9);
  });

  // NIST SP 811, appendix B.8: inch of water, conventional, is 2.490 889 E+02 Pa; seven digits of it are printed.
  test('an inch of water column has 249.0889 Pa', () => {
    const shown = displayedPressure("[in_i'H2O]");
    expect(shown.unit).toBe('in. w.c.');
    expect(Math.abs(shown.pascals - 249.0889)).toBeLessThan(0.001);
  });

  // A step of the last written digit is at most a few pascals: 0.001 kPa = 1 Pa, 0.01 mbar = 1 Pa, 0.01 in. w.c. = 2.5 Pa.
  test.each(['Pa', 'kPa', 'mbar', "[in_i'H2O]"] as const)('the last digit of %s shows a few pascals', (code) => {
    const { pascals, moreDigits } = displayedPressure(code);
    expect(pascals * 10 ** -moreDigits).toBeLessThan(3);
    expect(pascals * 10 ** -moreDigits).toBeGreaterThan(0.9);
  });
});
