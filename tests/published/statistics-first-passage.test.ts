import { describe, expect, test } from 'vitest';
import { passOneBarrier, passTwoBarriers } from '../../shared/statistics/first-passage.ts';
import scipy from './reference/statistics-scipy.json';

describe('first passage of a Brownian motion with drift', () => {
  test('one barrier: the inverse Gaussian of SciPy to 1e-8', () => {
    for (const [distance, drift, diffusion, time, chance] of scipy.one_barrier)
      expect(Math.abs(passOneBarrier(distance, drift, diffusion, time) - chance)).toBeLessThan(1e-8);
  });

  test('two barriers: a million simulated paths each, within 0.003', () => {
    for (const [above, below, drift, diffusion, time, chance] of scipy.two_barriers)
      expect(Math.abs(passTwoBarriers(above, below, drift, diffusion, time) - chance)).toBeLessThan(0.003);
  });

  test('two barriers, one of them out of reach, is one barrier', () => {
    for (const [distance, drift, diffusion, time] of scipy.one_barrier) {
      const one = passOneBarrier(distance, drift, diffusion, time);
      expect(Math.abs(passTwoBarriers(distance, 60, drift, diffusion, time) - one)).toBeLessThan(1e-9);
      expect(Math.abs(passTwoBarriers(60, distance, -drift, diffusion, time) - one)).toBeLessThan(1e-9);
    }
  });

  test('the barrier is left within 1, 2, 3 and 5 years: 5, 36, 64 and 90 % (common practice, no source)', () => {
    const chances = [1, 2, 3, 5].map((years) => Math.round(100 * passOneBarrier(1, 0.35, 0.35, years)));
    expect(chances).toEqual([5, 36, 64, 90]);
  });
});
