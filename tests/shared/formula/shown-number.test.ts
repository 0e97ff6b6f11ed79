import { expect, test } from 'vitest';
import { shownNumber, shownSpread } from '../../../shared/formula/shown-number.ts';

test.each([
  [101325, 'Pa', 0, '101325 Pa'],
  [757.00787, 'ppm', 0, '757.01 ppm'],
  [4000, 'ppm', 1, 'at least 4000 ppm'],
  [-0.05, '%', 0, '−0.05 %'],
  [0, '', 0, '0'],
  [Number.NaN, '%', 0, 'unknown'],
  [Number.POSITIVE_INFINITY, '%', 0, 'unknown'],
])('%d %s with bound %d is shown as %s', (value, unit, bound, shown) => {
  expect(shownNumber(value, unit, bound)).toBe(shown);
});

test('an uncertainty has three digits, and that of a temperature is in kelvin', () => {
  expect(shownSpread(1.23456, '°C')).toBe('1.23 K');
  expect(shownSpread(24.868, 'ppm')).toBe('24.9 ppm');
});
