import { describe, expect, test } from 'vitest';
import { minimize } from '../../../shared/statistics/minimize.ts';

describe('minimize', () => {
  test('Rosenbrock’s valley (1960, Comput. J. 3): minimum 0 at (1, 1)', () => {
    const valley = (x: Float64Array): number => 100 * (x[1] - x[0] ** 2) ** 2 + (1 - x[0]) ** 2;
    const found = minimize(valley, [-1.2, 1], { maxSteps: 300, difference: 1e-6, tolerance: 1e-6, longestStep: 1 });
    expect(found.at[0]).toBeCloseTo(1, 4);
    expect(found.at[1]).toBeCloseTo(1, 4);
    expect(found.converged).toBe(true);
  });

  test('a quadratic gives its own second derivatives', () => {
    const bowl = (x: Float64Array): number => 2 * x[0] ** 2 + 8 * x[1] ** 2;
    const found = minimize(bowl, [3, -2], { difference: 1e-4, tolerance: 1e-6 });
    expect(found.inverseHessian[0]).toBeCloseTo(1 / 4, 2);
    expect(found.inverseHessian[3]).toBeCloseTo(1 / 16, 2);
  });

  test('a function that is not a number beside the start is never left for worse', () => {
    const edge = (x: Float64Array): number => (x[0] < 0 ? Number.NaN : x[0]);
    const found = minimize(edge, [1]);
    expect(found.value).toBeLessThanOrEqual(1);
    expect(found.at[0]).toBeGreaterThanOrEqual(0);
  });

  test('no variables: nothing to do', () => {
    expect(minimize(() => 7, []).value).toBe(7);
  });
});
