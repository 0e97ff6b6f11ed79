import { expect, test } from 'vitest';
import { regress } from '../../../shared/statistics/regress.ts';
import { straightLine } from '../../../shared/statistics/straight-line.ts';

test('slope, t and residuals are those of the regression that is certified against NIST', () => {
  const x = [0, 1.1, 1.9, 3.2, 4, 5.3];
  const y = [100, 101.5, 99, 104, 106.2, 105];
  const { slope, t, freedom, residuals } = straightLine(x, y);
  const line = regress(y, [x.map(() => 1), x]);
  expect(slope).toBeCloseTo(line.coefficients[1], 12);
  expect(t).toBeCloseTo(line.coefficients[1] / line.standardErrors[1], 10);
  expect(freedom).toBe(line.freedom);
  y.forEach((value, i) => {
    expect(residuals[i]).toBeCloseTo(value - line.coefficients[0] - line.coefficients[1] * x[i], 12);
  });
});

test('readings that are all alike have no slope', () => {
  expect(straightLine([0, 1, 2], [5, 5, 5])).toMatchObject({ slope: 0, t: 0 });
});
