import { describe, expect, test } from 'vitest';
import { chanceOutsideAt, chanceOutWithin, type LevelState } from '../../../shared/foresight/leaving-chance.ts';
import { yearsUntilChance } from '../../../shared/foresight/years-until-chance.ts';
import { passOneBarrier, passTwoBarriers } from '../../../shared/statistics/first-passage.ts';
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

/** The definition: first passage from each level and with its rate, over the levels inside by 80,000 trapezoids. */
function byTrapezoids(asked: LevelState, { lower, upper }: typeof band, years: number): number {
  const sd = Math.sqrt(asked.levelVariance);
  const slope = asked.covariance / asked.levelVariance;
  const rateVariance = asked.rateVariance - slope * asked.covariance + (asked.rateWander ** 2 * years) / 3;
  const density = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
  const [from, to] = [Math.max(lower, asked.level - 8 * sd), Math.min(upper, asked.level + 8 * sd)];
  const steps = 80_000;
  const step = (to - from) / steps;
  let inside = 0;
  for (let i = 0; i <= steps; i++) {
    const x = from + i * step;
    const motion = {
      drift: asked.rate + slope * (x - asked.level),
      driftSd: Math.sqrt(rateVariance),
      diffusion: asked.wander,
    };
    const weight = i === 0 || i === steps ? 0.5 : 1;
    inside += weight * density((x - asked.level) / sd) * passTwoBarriers(upper - x, x - lower, motion, years);
  }
  return chanceOutsideAt(asked, { lower, upper }, 0) + (inside * step) / sd;
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

  test.each<[string, Partial<LevelState>, typeof band, number]>([
    ['both barriers within reach', {}, band, 4],
    ['a level near its barrier that moves away from it', { level: 0.95, rate: -0.6 }, band, 1.5],
    ['a level as uncertain as the band is wide', { levelVariance: 0.5 }, band, 1],
    [
      'an uncertainty that time has hardly added to',
      { wander: 0.02, rateVariance: 0.001, covariance: 0.002 },
      band,
      0.2,
    ],
    ['a rate known by its sign alone', { rateVariance: 0.5, covariance: -0.05, rateWander: 0.1 }, band, 5],
    ['one barrier', {}, { lower: Number.NEGATIVE_INFINITY, upper: 1 }, 3],
    ['a level outside', { level: 1.2, rate: -1 }, band, 2],
    ['a narrow band', {}, { lower: 0.25, upper: 0.4 }, 0.02],
  ])('the level’s mean by a fine trapezoid rule, to 1e-8: %s', (_, change, between, years) => {
    const asked = { ...state, ...change };
    expect(Math.abs(chanceOutWithin(asked, between, years) - byTrapezoids(asked, between, years))).toBeLessThan(1e-8);
    expect(Math.abs(chanceOutWithin(asked, between, years, 1e-4) - byTrapezoids(asked, between, years))).toBeLessThan(
      2e-4,
    );
  });

  test('a motion that does not wander: the normal distribution of its rate', () => {
    const straight = { ...state, levelVariance: 0, covariance: 0, wander: 0 };
    // The barrier is 0.7 away, where 0.35 a year lead in 2 years: one half of the rates reach it.
    expect(chanceOutWithin(straight, band, 2)).toBeCloseTo(0.5, 5);
    expect(chanceOutWithin({ ...straight, rateVariance: 0 }, band, 1.9)).toBe(0);
    expect(chanceOutWithin({ ...straight, rateVariance: 0 }, band, 2.1)).toBeCloseTo(1, 8);
  });

  test('what is unknown stays unknown, and a band without limits is never left', () => {
    for (const part of Object.keys(state))
      expect(chanceOutWithin({ ...state, [part]: Number.NaN }, band, 1), part).toBeNaN();
    expect(chanceOutWithin(state, band, Number.NaN)).toBeNaN();
    const open = { lower: Number.NEGATIVE_INFINITY, upper: Number.POSITIVE_INFINITY };
    expect(chanceOutWithin(state, open, 5)).toBe(0);
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
