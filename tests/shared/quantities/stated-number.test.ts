import { expect, test } from 'vitest';
import { statedNumber } from '../../../shared/quantities/stated-number.ts';

/** JCGM 100:2008, 7.2.6: an estimate is rounded to be consistent with its uncertainty, of which two digits are told. */
test.each([
  [757.00787, 24.868, '757', '25'],
  [10.057_62, 0.027, '10.058', '0.027'],
  [4.8, 0.17, '4.80', '0.17'],
  [4.8, 0.0996, '4.80', '0.10'],
  [101_325, 152, '101330', '150'],
  [12_345, 996, '12300', '1000'],
  [-0.004, 0.17, '0.00', '0.17'],
  [-3, 250, '0', '250'],
])('%d with %d is %s and %s', (value, sd, shown, shownSd) => {
  expect(statedNumber(value, sd)).toEqual({ value: shown, sd: shownSd });
});

test.each([
  [4, 0],
  [4, Number.NaN],
  [Number.NaN, 1],
  [4, -1],
  [4, 1e-30],
])('%d with %d is no such pair', (value, sd) => {
  expect(statedNumber(value, sd)).toBeUndefined();
});
