import { describe, expect, test } from 'vitest';
import { raisedOf, reasonsOf } from './judge.ts';

describe('gas supply', () => {
  const supplyRow = (given: Record<string, number | string | null>) =>
    Object.fromEntries(
      Object.entries({
        unit: 'B-1',
        readings_used: 7,
        last_read_on: '2026-03-01',
        horizon_on: '2027-06-01',
        ...given,
      }).map(([name, value]) => [name, [value]]),
    );

  test('above the plate’s maximum: shut and correct first; a later reading below closes it', async () => {
    const accepted = (statics: readonly number[]) => ({
      unit: statics.map(() => 'B-1'),
      taken_at: statics.map((_, i) => `2026-0${i + 1}-10`),
      fire: statics.map(() => 'high'),
      state: statics.map(() => 'as_found'),
      supply_static_Pa: statics,
    });
    // 14 in. w.c. = 3487.2 Pa, a usual plate maximum for natural gas.
    const limits = { unit: ['B-1'], supply_max_Pa: [3487.2447] };
    const [row] = await raisedOf({ accepted: accepted([2000, 3600]), 'supply-limits': limits });
    expect(row).toMatchObject({ reason: 'supply_over_maximum', tier: 'safety' });
    expect(row.evidence).toContain('3600 Pa (14.45 in. w.c.)');
    expect(row.checkFirst).toMatch(/^Shut the gas and correct the supply first/);
    expect(await reasonsOf({ accepted: accepted([3600, 2000]), 'supply-limits': limits })).toEqual([]);
    expect(await reasonsOf({ accepted: accepted([3487.2447]), 'supply-limits': limits })).toEqual([]);
  });

  test('under the minimum: do not tune, find out why', async () => {
    const [row] = await raisedOf({
      supply: supplyRow({ running_now_Pa: 1100, supply_min_Pa: 1245, verdict: 'unknown' }),
    });
    expect(row).toMatchObject({ reason: 'supply_under_minimum', tier: 'supply' });
    expect(row.checkFirst).toMatch(/^Do not tune; find out why/);
  });

  test('over comes before growing; within and unknown raise nothing', async () => {
    const table = (...verdicts: string[]) => ({
      unit: verdicts.map((_, i) => `B-${i}`),
      verdict: verdicts,
      drop_now_Pa: verdicts.map(() => 200),
      drop_limit_Pa: verdicts.map(() => 249),
      drop_slope_Pa_per_year: verdicts.map(() => 20),
    });
    expect(await reasonsOf({ supply: table('within', 'growing', 'over', 'unknown') })).toEqual([
      'B-2 supply_drop_over',
      'B-1 supply_drop_growing',
    ]);
  });
});
