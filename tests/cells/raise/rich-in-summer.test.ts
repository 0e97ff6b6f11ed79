import { describe, expect, test } from 'vitest';
import { raisedOf, reasonsOf } from './judge.ts';

describe('rich in summer', () => {
  const read = (burner: string, airSource: string, o2: number, trim = '') => ({
    accepted: {
      unit: ['D-1'],
      fuel: ['natural_gas'],
      taken_at: ['2026-01-20'],
      fire: ['high'],
      state: ['as_left'],
    },
    derived: {
      unit: ['D-1'],
      fuel: ['natural_gas'],
      taken_at: ['2026-01-20'],
      fire: ['high'],
      state: ['as_left'],
      o2_reference_pct: [o2],
      o2_reference_pct_sd: [0.2],
    },
    units: { unit: ['D-1'], fuel: ['natural_gas'], burner: [burner], air_source: [airSource], trim: [trim] },
  });

  test('a fan burner set lean enough in the cold only: O2 falls about 0.063 a degree, half of that in premix', async () => {
    // Constant-volume fan, fixed fuel: 3.0 % at 70 °F is 1.9 % at 100 °F (ideal-gas law, computed for the trade).
    const hot = { summerAirC: 37.8, richO2Pct: 2.6 };
    const [row] = await raisedOf(read('power', 'outside', 3), hot);
    expect(row).toMatchObject({ reason: 'rich_in_summer', tier: 'tolerance', fire: 'high' });
    // 1.1 points for 30 °F; the reference is 2 °F colder than 70 °F, hence a tenth to spare.
    expect(Math.abs(Number(/about (\d\.\d) %/.exec(row.evidence)?.[1]) - 1.9)).toBeLessThan(0.15);
    const [premix] = await raisedOf(read('premix', 'outside', 3), hot);
    expect(Math.abs(Number(/about (\d\.\d) %/.exec(premix.evidence)?.[1]) - 2.45)).toBeLessThan(0.15);
    expect(await reasonsOf(read('power', 'outside', 3))).toEqual([]);
  });

  test('not with trim, not from the boiler room, not where burner or air source is unknown', async () => {
    for (const given of [
      read('power', 'outside', 2, 'yes'),
      read('power', 'room', 2),
      read('', 'outside', 2),
      read('power', '', 2),
      read('atmospheric', 'outside', 2),
    ])
      expect(await reasonsOf(given)).toEqual([]);
  });
});
