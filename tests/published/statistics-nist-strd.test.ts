import { describe, expect, test } from 'vitest';
import { regress } from '../../shared/statistics/regress.ts';
import { CERTIFIED_FITS } from './reference/nist-strd.ts';

/** Agreement to so many significant digits. */
function expectDigits(found: number, certified: number, digits: number): void {
  expect(Math.abs(found / certified - 1)).toBeLessThan(0.5 * 10 ** -digits);
}

describe('NIST StRD linear regression, certified values', () => {
  test.each(CERTIFIED_FITS.map((fit) => [fit.name, fit] as const))('%s to 12 digits', (_, fit) => {
    const found = regress(fit.y, fit.columns, fit.centred);
    fit.coefficients.forEach((value, i) => {
      expectDigits(found.coefficients[i], value, 12);
    });
    fit.standardErrors.forEach((value, i) => {
      expectDigits(found.standardErrors[i], value, 12);
    });
    expectDigits(found.residualSd, fit.residualSd, 12);
    expectDigits(found.rSquared, fit.rSquared, 12);
  });
});
