import { describe, expect, test } from 'vitest';
import { mixtureQuantile } from '../../../shared/statistics/mixture-quantile.ts';
import { normalCdf } from '../../../shared/statistics/normal.ts';

describe('quantiles of a mixture of normals', () => {
  test('one normal: 1.959964 standard deviations (any table of the normal)', () => {
    expect(mixtureQuantile([{ weight: 1, mean: 3, sd: 2 }], 0.975)).toBeCloseTo(3 + 2 * 1.959963984540054, 9);
  });

  test('of two it is where their weighted distribution functions reach the probability', () => {
    const parts = [
      { weight: 0.97, mean: 0.1, sd: 0.05 },
      { weight: 0.03, mean: 0.3, sd: 0.3 },
    ];
    for (const probability of [0.025, 0.5, 0.975]) {
      const at = mixtureQuantile(parts, probability);
      const below = 0.97 * normalCdf((at - 0.1) / 0.05) + 0.03 * normalCdf((at - 0.3) / 0.3);
      expect(below).toBeCloseTo(probability, 6);
    }
  });

  test('a rare wide part moves the end of the interval by less than it widens the variance', () => {
    // Mean 0, variance 0.97·1 + 0.03·25 = 1.72, so that a normal with it would end at 1.96·√1.72 = 2.57.
    const end = mixtureQuantile(
      [
        { weight: 0.97, mean: 0, sd: 1 },
        { weight: 0.03, mean: 0, sd: 5 },
      ],
      0.975,
    );
    expect(end).toBeGreaterThan(1.96);
    expect(end).toBeLessThan(2.3);
  });
});
