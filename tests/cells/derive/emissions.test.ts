import { describe, expect, test } from 'vitest';
import { one, type Row } from './derive-readings.ts';

describe('emissions at any reference O2', () => {
  const own = async (row: Row, formula: string, unit = '') =>
    Number((await one(row, { parameters: { columns: [{ name: 'own', unit, formula }] } }))('own'));
  test('100 ppm at 7 % is 129 ppm at 3 % and 150 ppm at 0 % (arithmetic of practitioners)', async () => {
    expect(await own({ o2_pct: 7, co_ppm: 100 }, 'co_at_o2(3)', '[ppm]')).toBeCloseTo(128.8, 1);
    expect(await own({ o2_pct: 7, nox_ppm: 100 }, 'nox_at_o2(3)', '[ppm]')).toBeCloseTo(128.8, 1);
    expect(await own({ o2_pct: 7, co_ppm: 100 }, 'co_at_o2(0)')).toBeCloseTo(150.4, 1);
    expect(await own({ o2_pct: 7, co_ppm: 100 }, 'co_at_o2(o2_pct)')).toBeCloseTo(100, 10);
  });
  test('air-free CO is not made air-free again', async () => {
    expect(await own({ o2_pct: 9, co_air_free_ppm: 263 }, 'co_at_o2(0)')).toBeCloseTo(263, 10);
  });
  test('mg/m3: 1 ppm NOx is 2.0525, 1 ppm CO 1.2497 at 0 °C (computed)', async () => {
    expect(await own({ o2_pct: 3, nox_ppm: 1 }, 'nox_mg_per_m3_at_o2(3)', 'mg/m3')).toBeCloseTo(2.0525, 3);
    expect(await own({ o2_pct: 3, co_ppm: 1 }, 'co_mg_per_m3_at_o2(3)', 'mg/m3')).toBeCloseTo(1.2497, 3);
  });
  test('a reference of 20.9 % or more is refused', async () => {
    await expect(own({ o2_pct: 3, co_ppm: 1 }, 'co_at_o2(20.9)')).rejects.toThrow(
      'reference O2 from 0 to below 20.9 %',
    );
  });
  test('other units by declaring them: lb/MMBtu as ng/J', async () => {
    const pounds = await own({ o2_pct: 3, nox_ppm: 30 }, 'nox_lb_per_MMBtu', 'lb/MMBtu');
    expect(await own({ o2_pct: 3, nox_ppm: 30 }, 'nox_lb_per_MMBtu', 'ng/J')).toBeCloseTo(pounds * 429.923, 3);
  });
});
