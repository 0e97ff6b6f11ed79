import { describe, expect, test } from 'vitest';
import { type Motion, passOneBarrier, passTwoBarriers } from '../../shared/statistics/first-passage.ts';
import { normals, seededRandom } from '../verify/simulate-fleet.ts';
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

  test('two barriers: the series of sines of the killed motion (Darling and Siegert 1953), to 1e-9', () => {
    for (const [width, above, drift, diffusion, time] of [
      [1, 0.3, 0.2, 0.4, 1],
      [1, 0.05, -1.2, 0.5, 0.3],
      [1, 0.9, 0.8, 0.3, 2],
      [2, 1, 0, 0.6, 1.5],
      [0.5, 0.1, 0.3, 0.6, 0.5],
    ]) {
      // Survival Σ (2/w) sin(nπb/w) exp(−n²π²σ²t/2w² − ν²t/2σ² − νb/σ²) ∫₀ʷ exp(νy/σ²) sin(nπy/w) dy.
      const [below, lean] = [width - above, drift / diffusion ** 2];
      let left = 0;
      for (let n = 1; n < 200; n++) {
        const wave = (n * Math.PI) / width;
        const integral = (wave * (1 - (-1) ** n * Math.exp(lean * width))) / (lean * lean + wave * wave);
        const fade = 0.5 * time * ((wave * diffusion) ** 2 + (drift / diffusion) ** 2) + lean * below;
        left += (2 / width) * Math.sin(wave * below) * Math.exp(-fade) * integral;
      }
      expect(Math.abs(passTwoBarriers(above, below, known(drift, diffusion), time) - (1 - left))).toBeLessThan(1e-9);
    }
  });

  test('two barriers far apart: a path from beside the one, driven to the other, is counted once; 100,000 simulated', () => {
    const random = seededRandom(5);
    const normal = normals(random);
    for (const [drift, driftSd] of [
      [-1, 0],
      [-0.9, 0.3],
    ]) {
      const [width, above, diffusion, steps, paths] = [1, 0.02, 0.13, 40, 100_000];
      const wandered = diffusion ** 2 / steps;
      const touch = (a: number, b: number): number => (a <= 0 || b <= 0 ? 1 : Math.exp((-2 * a * b) / wandered));
      let out = 0;
      for (let path = 0; path < paths; path++) {
        const rate = drift + driftSd * normal();
        let [room, isOut] = [above, false];
        for (let step = 0; step < steps && !isOut; step++) {
          const next = room - rate / steps - Math.sqrt(wandered) * normal();
          isOut = random() > (1 - touch(room, next)) * (1 - touch(width - room, width - next));
          room = next;
        }
        if (isOut) out++;
      }
      // Four standard errors of 100,000 paths are 0.006.
      const chance = passTwoBarriers(above, width - above, { drift, driftSd, diffusion }, 1);
      expect(Math.abs(chance - out / paths)).toBeLessThan(0.006);
    }
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
