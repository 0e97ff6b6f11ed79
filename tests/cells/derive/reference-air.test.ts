import { describe, expect, test } from 'vitest';
import { one, type Row } from './derive-readings.ts';

describe('reference air', () => {
  const air = (burner: Row) =>
    one({ o2_pct: 5, air_C: -12 }, { units: [{ unit: 'A-1', fuel: 'natural_gas', ...burner }] });
  test('by the way the burner is fed', async () => {
    const fixed = Number((await air({ burner: 'power', fuel_air_control: 'linkage' }))('o2_reference_pct'));
    const premix = Number((await air({ burner: 'premix' }))('o2_reference_pct'));
    expect(fixed).toBeLessThan(premix);
    expect(premix).toBeLessThan(5);
    for (const none of [{ burner: 'power', trim: 'yes' }, { burner: 'atmospheric' }, {}]) {
      const at = await air(none as Row);
      expect(at('o2_reference_pct')).toBeCloseTo(5, 10);
      expect(at('co2_reference_pct')).toBeCloseTo(Number(at('co2_pct')), 10);
    }
  });
  test('a burner of which nothing is known keeps a wide uncertainty for the season', async () => {
    const trim = await air({ trim: 'yes' });
    const unknown = await air({});
    expect(Number(unknown('o2_reference_pct_sd'))).toBeGreaterThan(2 * Number(trim('o2_reference_pct_sd')));
    expect(unknown('flags')).toContain('season_not_removed');
  });
  test('a barometer of the mountains without an altitude corrects nothing and is flagged; with one it corrects', async () => {
    const lone = await one({ o2_pct: 5, air_C: 20, barometer_kPa: 84 });
    expect(lone('o2_reference_pct')).toBeCloseTo(5, 10);
    expect(lone('flags')).toContain('altitude_missing');
    const units = [{ unit: 'A-1', fuel: 'natural_gas', burner: 'power', altitude_m: 1600 }];
    const placed = await one({ o2_pct: 5, air_C: 20, barometer_kPa: 82 }, { units });
    expect(Number(placed('o2_reference_pct'))).toBeGreaterThan(5);
    expect(placed('flags')).not.toContain('altitude_missing');
  });
});
