import { describe, expect, test } from 'vitest';
import { chanceOutsideAt, chanceOutWithin, type LevelState } from '../../../shared/foresight/leaving-chance.ts';
import { yearsUntilChance } from '../../../shared/foresight/years-until-chance.ts';
import { passOneBarrier } from '../../../shared/statistics/first-passage.ts';
import { normals, seededRandom } from '../../verify/simulate-fleet.ts';

const state: LevelState = {
  level: 0.3,
  rate: 0.35,
  levelVariance: 0.02,
  rateVariance: 0.03,
  covariance: 0.01,
  wander: 0.25,
  rateWander: 0,
};
const band = { lower: -0.8, upper: 1 };

/** 40,000 drawn levels, rates and paths: the standard error of a chance is below 0.0025. */
function simulate(years: number): { out: number; outside: number } {
  const random = seededRandom(11);
  const normal = normals(random);
  const tilt = state.covariance / Math.sqrt(state.levelVariance);
  const [paths, steps] = [40_000, 40];
  const dt = years / steps;
  let [out, outside] = [0, 0];
  for (let path = 0; path < paths; path++) {
    const z = normal();
    let x = state.level + Math.sqrt(state.levelVariance) * z;
    const rate = state.rate + tilt * z + Math.sqrt(state.rateVariance - tilt * tilt) * normal();
    let inside = x > band.lower && x < band.upper;
    for (let step = 0; step < steps; step++) {
      const next = x + rate * dt + state.wander * Math.sqrt(dt) * normal();
      // Chance that the bridge between the two places has touched a barrier.
      const touch = (a: number, b: number): number =>
        a <= 0 || b <= 0 ? 1 : Math.exp((-2 * a * b) / (state.wander * state.wander * dt));
      const kept = (1 - touch(band.upper - x, band.upper - next)) * (1 - touch(x - band.lower, next - band.lower));
      if (random() > kept) inside = false;
      x = next;
    }
    if (!inside) out++;
    if (x < band.lower || x > band.upper) outside++;
  }
  return { out: out / paths, outside: outside / paths };
}

describe('chances of leaving', () => {
  test.each([0.5, 1.5, 4])('as simulated over %s years', (years) => {
    const { out, outside } = simulate(years);
    expect(Math.abs(chanceOutWithin(state, band, years) - out)).toBeLessThan(0.008);
    expect(Math.abs(chanceOutsideAt(state, band, years) - outside)).toBeLessThan(0.008);
  });

  test('a known level and rate between a near and a far barrier: the inverse Gaussian', () => {
    const known = { ...state, levelVariance: 0, rateVariance: 0, covariance: 0 };
    const far = { lower: Number.NEGATIVE_INFINITY, upper: 1 };
    const expected = passOneBarrier(0.7, { drift: 0.35, driftSd: 0, diffusion: 0.25 }, 2);
    expect(chanceOutWithin(known, far, 2)).toBeCloseTo(expected, 5);
  });

  test('the chance never falls with time, and starts as the chance of being outside when left', () => {
    const chances = [0, 0.1, 0.5, 1, 2, 4, 8].map((years) => chanceOutWithin(state, band, years));
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(chances[0]).toBeCloseTo(chanceOutsideAt(state, band, 0), 9);
  });

  test('dates: the chance on each is the share asked for; none where it is not reached', () => {
    const shares = [0.1, 0.5, 0.9];
    yearsUntilChance(state, band, shares, 8).forEach((years, i) => {
      expect(Math.abs(chanceOutWithin(state, band, years) - shares[i])).toBeLessThan(0.003);
    });
    const still = { ...state, rate: 0, rateVariance: 1e-6, covariance: 0, wander: 0.05 };
    expect(yearsUntilChance(still, band, shares, 5).every(Number.isNaN)).toBe(true);
    expect(yearsUntilChance({ ...state, level: 3 }, band, [0.5], 5)).toEqual([0]);
  });
});
