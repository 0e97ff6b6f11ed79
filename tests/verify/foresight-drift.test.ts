import { describe, expect, test } from 'vitest';
import { type Score, scoreForecasts } from './score-forecasts.ts';
import { type FleetPlan, PLAIN_FLEET } from './simulate-fleet.ts';

/** O2 and measured CO2 by ordinary instruments, an offset between them, technicians who set within a tenth. */
const BOTH_CELLS: FleetPlan = {
  ...PLAIN_FLEET,
  units: 150,
  meanRate: 0.3,
  rateSd: 0.3,
  wander: 0.15,
  reading: 0.1,
  visit: 0.05,
  analyzerSd: 0.1,
  second: { noise: 0.12, offset: 0.3, analyzerSd: 0.1 },
  adjustBeyond: 0.6,
  setting: 0.1,
};

const BAND = { lower: -0.8, upper: 1 };
const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

function expectHonest(name: string, score: Score): void {
  console.log(
    name,
    JSON.stringify(score, (_, value) => (typeof value === 'number' ? Number(value.toFixed(3)) : value)),
  );
  expect(score.coverage).toBeGreaterThan(0.92);
  expect(score.coverage).toBeLessThan(0.98);
  expect(score.width).toBeLessThan(1.2);
  expect(score.skillOfReadings).toBeGreaterThan(0.9);
}

describe('rates are covered, intervals are no wider than they must be, chances come near what the readings can tell', () => {
  test.each([
    ['plain', PLAIN_FLEET, 3],
    ['heavy-tailed rates', { ...PLAIN_FLEET, rateFreedom: 3 }, 3],
    ['two analyzers only', { ...PLAIN_FLEET, analyzers: 2 }, 3],
    [
      'as-left rows missing, never adjusted',
      { ...PLAIN_FLEET, recordLeft: false, recordAdjusted: false, adjustBeyond: 99 },
      3,
    ],
    [
      'as-left rows missing, adjustments not recorded',
      { ...PLAIN_FLEET, recordLeft: false, recordAdjusted: false, setting: 0.1 },
      3,
    ],
    ['as-left rows missing, adjustments recorded', { ...PLAIN_FLEET, recordLeft: false, setting: 0.1 }, 3],
    ['ten units over 100 seeds', { ...PLAIN_FLEET, units: 10 }, 100],
    ['3,000 units', { ...PLAIN_FLEET, units: 3000 }, 1],
  ] as const)('%s', (name, plan, count) => {
    expectHonest(name, scoreForecasts(plan, seeds(count), BAND));
  });

  test('both cells: at least 85 % of the skill of the true levels and rates', () => {
    const score = scoreForecasts(BOTH_CELLS, seeds(3), BAND);
    expectHonest('both cells', score);
    expect(score.skill).toBeGreaterThan(0.85);
  });
});
