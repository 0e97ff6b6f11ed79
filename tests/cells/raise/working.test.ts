import { describe, expect, test } from 'vitest';
import { WORKED_REASONS } from '../../../cells/raise/worked-reasons.ts';
import { textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Working } from '../../../shared/working/working.ts';
import { type Given, judge, raisedExample } from './judge.ts';

async function workingOf(given: Given, parameters = {}): Promise<Working> {
  const found = (await judge(given, parameters)).working(0);
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  return found.value;
}

const READINGS = {
  unit: ['U-1', 'U-1'],
  taken_at: ['2026-01-10', '2026-05-10'],
  fire: ['high', 'high'],
  state: ['as_left', 'as_found'],
  source_file: ['a.csv', 'a.csv'],
  source_line: [2, 3],
};
const lane = (level: number, chance = 1): Given => ({
  accepted: READINGS,
  derived: {
    ...{ unit: ['U-1', 'U-1'], fuel: ['natural_gas', 'natural_gas'], fire: ['high', 'high'] },
    ...{ co2_reference_pct: [8.9, 8.3], co2_reference_pct_sd: [0.2, 0.2] },
  },
  drift: {
    ...{ unit: ['U-1'], fuel: ['natural_gas'], fire: ['high'], quantity: ['co2_pct'], readings_used: [9] },
    ...{ lower_limit: [8.4], upper_limit: [9.2], level_now: [level], level_now_sd: [0.08] },
    ...{ slope_per_year: [-0.1], horizon_on: ['2027-06-01'], probability_out_by_horizon: [chance] },
  },
});

describe('how a raised figure came about', () => {
  test.each([
    [8.2, 'CO2 beyond its limit', 'ΔCO2 = CO2,lower − CO2,now', 0.2],
    [9.5, 'CO2 beyond its limit', 'ΔCO2 = CO2,now − CO2,upper', 0.3],
    [8.5, 'CO2 inside its nearer limit', 'ΔCO2 = CO2,now − CO2,lower', 0.1],
    [9.1, 'CO2 inside its nearer limit', 'ΔCO2 = CO2,upper − CO2,now', 0.1],
  ])('a level of %d %% in a band of 8.4 to 9.2: %s', async (level, title, symbols, value) => {
    const { steps, inputs, readings } = await workingOf(lane(level));
    expect(steps).toHaveLength(1);
    expect(steps[0]).toMatchObject({ title, symbols, unit: 'points', value: expect.closeTo(value, 12) });
    // The limit is exact, so the distance is as uncertain as the level.
    expect(steps[0].sd).toBeCloseTo(0.08, 12);
    expect(inputs.flatMap(({ from }) => from ?? [])).toEqual([{ cell: 'derive', column: 'co2_reference_pct', row: 1 }]);
    expect(readings[0]).toMatchObject({ file: 'a.csv', line: 3, state: 'as_found' });
  });

  test('a supply above the maximum of the register', async () => {
    const { steps, readings } = await workingOf({
      accepted: { ...READINGS, supply_static_Pa: [2400, 3600], supply_running_Pa: [2300, 3300] },
      'supply-limits': { unit: ['U-1'], supply_max_Pa: [3487] },
    });
    expect(steps[0]).toMatchObject({ numbers: 'Δp = 3600 Pa − 3487 Pa', result: '113 Pa' });
    expect(readings[0].fields).toEqual(['supply_static_Pa']);
  });

  test('a drop over its limit leads on to the drop of the last reading', async () => {
    const { steps, inputs } = await workingOf({
      accepted: { ...READINGS, supply_static_Pa: [2400, 2400], supply_running_Pa: [2200, 2100] },
      derived: {
        ...{ unit: ['U-1', 'U-1'], fuel: ['natural_gas', 'natural_gas'], fire: ['high', 'high'] },
        ...{ supply_drop_Pa: [200, 300], supply_drop_Pa_sd: [30, 30] },
      },
      supply: {
        ...{ unit: ['U-1'], verdict: ['over'], drop_now_Pa: [290], drop_now_sd_Pa: [12], drop_limit_Pa: [249.0889] },
        readings_used: [2],
      },
    });
    expect(steps[0].value).toBeCloseTo(290 - 249.0889, 9);
    expect(inputs.find(({ from }) => from)?.from).toEqual({ cell: 'derive', column: 'supply_drop_Pa', row: 1 });
  });

  test('without anything derived the reading itself is the end of it', async () => {
    const { steps, inputs } = await workingOf({ accepted: { ...READINGS, co_ppm: [20, 460], o2_pct: [5, 8.2] } });
    expect(steps[0].value).toBeCloseTo((460 * 20.9) / (20.9 - 8.2) - 400, 9);
    expect(inputs.every(({ from }) => from === undefined)).toBe(true);
  });

  test('the reasons that the page offers a working for are those that have one, and no other', async () => {
    const result = await raisedExample();
    const reason = textsOf(result.tables['raised'], 'reason');
    for (let row = 0; row < result.tables['raised'].rows; row++) {
      const found = result.working(row);
      expect([textAt(reason, row), found.status]).toEqual([
        textAt(reason, row),
        WORKED_REASONS.has(textAt(reason, row)) ? 'value' : 'error',
      ]);
    }
  });
});
