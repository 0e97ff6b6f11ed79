import { describe, expect, test } from 'vitest';
import { type Motion, passOneBarrier, passTwoBarriers } from '../../shared/statistics/first-passage.ts';
import scipy from './reference/statistics-scipy.json';

const known = (drift: number, diffusion: number): Motion => ({ drift, driftSd: 0, diffusion });

describe('first passage of a Brownian motion with drift', () => {
  test('one barrier: the inverse Gaussian of SciPy to 1e-8', () => {
    for (const [distance, drift, diffusion, time, chance] of scipy.one_barrier)
      expect(Math.abs(passOneBarrier(distance, known(drift, diffusion), time) - chance)).toBeLessThan(1e-8);
  });

  test('two barriers: a million simulated paths each, within 0.003', () => {
    for (const [above, below, drift, diffusion, time, chance] of scipy.two_barriers)
      expect(Math.abs(passTwoBarriers(above, below, known(drift, diffusion), time) - chance)).toBeLessThan(0.003);
  });

  test('two barriers, one of them out of reach, is one barrier', () => {
    for (const [distance, drift, diffusion, time] of scipy.one_barrier) {
      const one = passOneBarrier(distance, known(drift, diffusion), time);
      expect(Math.abs(passTwoBarriers(distance, 60, known(drift, diffusion), time) - one)).toBeLessThan(1e-9);
      expect(Math.abs(passTwoBarriers(60, distance, known(-drift, diffusion), time) - one)).toBeLessThan(1e-9);
    }
  });

  test('the barrier is left within 1, 2, 3 and 5 years: 5, 36, 64 and 90 % (common practice, no source)', () => {
    const chances = [1, 2, 3, 5].map((years) => Math.round(100 * passOneBarrier(1, known(0.35, 0.35), years)));
    expect(chances).toEqual([5, 36, 64, 90]);
  });

  test('an uncertain drift is the mean over the drift, by a fine trapezoid rule', () => {
    const mean = (chance: (drift: number) => number, drift: number, sd: number): number => {
      let [sum, weights] = [0, 0];
      for (let i = -400; i <= 400; i++) {
        const weight = Math.exp(-0.5 * (i / 50) ** 2);
        weights += weight;
        sum += weight * chance(drift + (sd * i) / 50);
      }
      return sum / weights;
    };
    for (const [above, below, drift, diffusion, time] of scipy.two_barriers)
      for (const driftSd of [0.05, 0.3, 1]) {
        const one = mean((v) => passOneBarrier(above, known(v, diffusion), time), drift, driftSd);
        expect(Math.abs(passOneBarrier(above, { drift, driftSd, diffusion }, time) - one)).toBeLessThan(1e-8);
        const two = mean((v) => passTwoBarriers(above, below, known(v, diffusion), time), drift, driftSd);
        expect(Math.abs(passTwoBarriers(above, below, { drift, driftSd, diffusion }, time) - two)).toBeLessThan(1e-8);
      }
  });
});
