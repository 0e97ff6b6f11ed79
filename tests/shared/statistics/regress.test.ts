import { Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import { regress } from '../../../shared/statistics/regress.ts';

test('agrees with a library’s least squares on an ordinary set', () => {
  const x = [0, 1, 2, 3, 4, 5, 6];
  const y = [1.1, 2.3, 2.9, 4.2, 5.1, 5.8, 7.3];
  const design = new Matrix(x.map((value) => [1, value, value * value]));
  const expected = solve(design, Matrix.columnVector(y)).to1DArray();
  const found = regress(y, [x.map(() => 1), x, x.map((value) => value * value)]);
  found.coefficients.forEach((value, i) => {
    expect(value).toBeCloseTo(expected[i], 10);
  });
  expect(found.freedom).toBe(4);
});

test('as many coefficients as readings: exact, and no standard error', () => {
  const found = regress(
    [1, 3],
    [
      [1, 1],
      [0, 1],
    ],
  );
  expect(found.coefficients).toEqual([1, 2]);
  expect(found.standardErrors.every(Number.isNaN)).toBe(true);
});
