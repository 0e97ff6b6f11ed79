import { describe, expect, test } from 'vitest';
import type { FleetReadings } from '../../shared/foresight/fleet-readings.ts';
import { scoreForecasts } from './score-forecasts.ts';
import { type FleetPlan, PLAIN_FLEET } from './simulate-fleet.ts';

const BAND = { lower: -0.8, upper: 1 };
const seeds = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);
const blind = (readings: FleetReadings): FleetReadings => ({
  ...readings,
  zoneMonth: new Int32Array(readings.rows).fill(-1),
  zoneMonths: 0,
});

/** Three gas zones of fifty units; the Wobbe index swings by a per cent or two from month to month. */
const GAS: FleetPlan = {
  ...PLAIN_FLEET,
  units: 150,
  zones: 3,
  zoneSd: 0.25,
  reading: 0.1,
  visit: 0.05,
  analyzerSd: 0.1,
  second: { noise: 0.12, offset: 0.3, analyzerSd: 0.1 },
  adjustBeyond: 0.6,
  setting: 0.1,
};

describe('what a gas zone’s month does to all its units', () => {
  test('a fleet that has it: found, its size told, covered, and worth a good deal of skill', () => {
    const knowing = scoreForecasts(GAS, seeds(3), BAND);
    const unknowing = scoreForecasts(GAS, seeds(3), BAND, blind);
    console.log('with gas', JSON.stringify({ knowing, unknowing }));
    expect(knowing.zoned).toBe(3);
    for (const zone of knowing.zones) expect(Math.abs(zone / GAS.zoneSd - 1)).toBeLessThan(0.2);
    expect(knowing.coverage).toBeGreaterThan(0.92);
    expect(knowing.coverage).toBeLessThan(0.98);
    expect(knowing.width).toBeLessThan(1.2);
    expect(knowing.skillOfReadings).toBeGreaterThan(0.95);
    expect(knowing.skill).toBeGreaterThan(unknowing.skill + 0.02);
  });

  test.each([
    ['100 units', { ...PLAIN_FLEET, zones: 2 }, 20],
    ['20 units', { ...PLAIN_FLEET, units: 20 }, 60],
    ['150 units, both cells', { ...GAS, zoneSd: 0 }, 3],
  ] as const)('a fleet without it, %s: next to never found, and no skill lost', (name, plan, count) => {
    const knowing = scoreForecasts(plan, seeds(count), BAND);
    const unknowing = scoreForecasts(plan, seeds(count), BAND, blind);
    console.log(name, knowing.zoned, knowing.skill, unknowing.skill);
    expect(knowing.zoned / count).toBeLessThanOrEqual(0.05);
    expect(knowing.skill).toBeGreaterThan(unknowing.skill - 0.003);
    expect(knowing.coverage).toBeGreaterThan(0.92);
  });
});
