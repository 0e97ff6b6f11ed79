import { describe, expect, test } from 'vitest';
import { cellOf, deriveReadings, one } from './derive-readings.ts';

describe('columns of one’s own take names of their own', () => {
  test.each([
    [['dry_flue'], 'relation or a constant'],
    [['air_oxygen'], 'relation or a constant'],
    [['mine', 'mine'], 'two columns of your own write mine'],
    [['mine', 'mine_sd'], 'two columns of your own write mine_sd'],
    [['unknown'], 'relation or a constant'],
  ] as const)('%j: %s', async (names, part) => {
    const columns = names.map((name) => ({ name, unit: '', formula: '1' }));
    await expect(one({ o2_pct: 5 }, { parameters: { columns } })).rejects.toThrow(part);
  });
  test('names of an object’s own are names like others', async () => {
    const columns = ['constructor', '__proto__', 'toString'].map((name, i) => ({
      name,
      unit: '',
      formula: `${i} + o2_pct / o2_pct`,
    }));
    const at = await one({ o2_pct: 5 }, { parameters: { columns } });
    expect(['constructor', '__proto__', 'toString'].map(at)).toEqual([1, 2, 3]);
  });
});

describe('columns of one’s own', () => {
  const rows = [
    { unit: 'A-1', o2_pct: 5, flue_C: 200, air_C: 20, co_ppm: '>4000' },
    { unit: 'A-1', o2_pct: 6, flue_C: 220, air_C: 20, co_ppm: 10, fire: 'low' },
  ];
  test('stand after the others, with unit, uncertainty and bounds', async () => {
    const parameters = {
      columns: [
        { name: 'net_flue', unit: 'K', formula: 'flue_C - air_C' },
        { name: 'co_per_megawatt', unit: '', formula: 'co_air_free_ppm * 2' },
        { name: 'against_mean', unit: '%', formula: 'o2_pct - mean(o2_pct, unit)' },
        { name: 'age', unit: 'd', formula: 'days_between(taken_at, date("2025-11-02"))' },
      ],
    };
    const result = await deriveReadings(rows, { parameters });
    expect(result.own).toEqual(['net_flue', 'co_per_megawatt', 'against_mean', 'age']);
    expect([cellOf(result, 0, 'net_flue'), cellOf(result, 1, 'net_flue')]).toEqual([180, 200]);
    expect(Number(cellOf(result, 0, 'net_flue_sd'))).toBeCloseTo(Math.hypot(1.5, 1), 10);
    expect(result.tables.derived.columns.get('co_per_megawatt')).toMatchObject({
      bounds: Int8Array.of(1, 0),
      unit: '[ppm]',
    });
    expect(cellOf(result, 1, 'against_mean')).toBeCloseTo(0.5, 10);
    expect(cellOf(result, 0, 'age')).toBe(31);
  });
  test.each([
    [{ name: 'o2_pct', unit: '', formula: '1' }, 'relation or a constant'],
    [{ name: 'mine', unit: '', formula: 'flue_C + supply_static_Pa' }, 'flue_C in °C and supply_static_Pa in Pa'],
    [{ name: 'mine', unit: '', formula: 'mine + 1' }, 'reads itself'],
    [{ name: 'mine', unit: '', formula: 'flue_temprature_C' }, 'nothing here is called'],
  ])('%j is refused: %s', async (column, part) => {
    await expect(deriveReadings(rows, { parameters: { columns: [column] } })).rejects.toThrow(part);
  });
});
