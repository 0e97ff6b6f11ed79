import { expect, test } from 'vitest';
import { shownDoubt, shownNumber } from '../../../shared/formula/shown-number.ts';

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

test('beside its uncertainty a number ends where the two digits of that end; of a temperature it is in kelvin', () => {
  expect(shownDoubt(120.04, 1.23456, '°C')).toEqual({ stated: '120.0 °C', shownSd: '1.2 K' });
  expect(shownDoubt(757.00787, 24.868, 'ppm')).toEqual({ stated: '757 ppm', shownSd: '25 ppm' });
  expect(shownDoubt(757.00787, 0, 'ppm')).toEqual({ stated: '757.01 ppm', shownSd: '' });
  expect(shownDoubt(4000, 150, 'ppm', 1)).toEqual({ stated: 'at least 4000 ppm', shownSd: '150 ppm' });
});
