import { describe, expect, test } from 'vitest';
import { derivedSchema } from '../../../shared/schemas/derived.ts';
import { missingColumns } from '../../../shared/table/schema.ts';
import { cellOf, deriveReadings, flagsOf, one, type Row } from './derive-readings.ts';

describe('the table', () => {
  test('has one row a reading in the readings’ order and every column of the schema', async () => {
    const result = await deriveReadings([{ o2_pct: 5 }, { o2_pct: 3, fire: 'low' }, {}]);
    const { derived } = result.tables;
    expect(derived.rows).toBe(3);
    expect(missingColumns(derivedSchema, derived)).toEqual([]);
    expect([...derived.columns.keys()]).toEqual(derivedSchema.map(({ name }) => name));
    expect([0, 1, 2].map((row) => cellOf(result, row, 'fire'))).toEqual(['high', 'low', 'high']);
    expect(result.answer).toContain('3 readings');
  });

  test('no reading at all is an empty table', async () => {
    const result = await deriveReadings([]);
    expect(result.tables.derived.rows).toBe(0);
    expect(result.answer).toBe('No reading to derive from.');
  });
});

describe('the fuel of a reading', () => {
  const units = [
    { unit: 'A-1', fuel: 'no2_oil' },
    { unit: 'A-2', fuel: 'natural_gas' },
    { unit: 'A-2', fuel: 'no2_oil' },
  ];
  test.each([
    [{ unit: 'A-1', fuel: 'propane' }, 'propane', []],
    [{ unit: 'A-1' }, 'no2_oil', []],
    [{ unit: 'A-2' }, 'natural_gas', ['fuel_ambiguous']],
    [{ unit: 'A-2', fuel: 'no2_oil' }, 'no2_oil', []],
    [{ unit: 'A-9' }, 'natural_gas', ['fuel_assumed', 'unit_not_registered']],
  ])('%j: %s', async (row, fuel, flags) => {
    const at = await one({ o2_pct: 5, ...row }, { units });
    expect(at('fuel')).toBe(fuel);
    expect(String(at('flags')).split(' ')).toEqual(expect.arrayContaining(flags));
  });
  test('the default fuel stands in without the flag', async () => {
    const at = await one({ unit: 'A-9', o2_pct: 5 }, { units, parameters: { defaultFuel: 'methane' } });
    expect(at('fuel')).toBe('methane');
    expect(at('flags')).not.toContain('fuel_assumed');
  });
  test('an unknown fuel leaves everything unknown but the supply drop, and the remark names the nearest', async () => {
    const row = { fuel: 'propan', o2_pct: 5, flue_C: 150, air_C: 20, supply_static_Pa: 2400, supply_running_Pa: 2200 };
    const result = await deriveReadings([row]);
    expect(cellOf(result, 0, 'excess_air_pct')).toBeNaN();
    expect(cellOf(result, 0, 'efficiency_gross_pct')).toBeNaN();
    expect(cellOf(result, 0, 'supply_drop_Pa')).toBe(200);
    expect(cellOf(result, 0, 'flags')).toContain('fuel_unknown');
    expect(result.remarks[0]).toMatchObject({
      severity: 'danger',
      text: expect.stringContaining('did you mean propane'),
    });
  });
  test('a fuel of one’s own is used by its name', async () => {
    const parameters = { fuels: [{ name: 'site_gas', mole_pct: { methane: 80, hydrogen: 15, nitrogen: 5 } }] };
    const at = await one({ fuel: 'site_gas', o2_pct: 5 }, { parameters });
    expect(at('excess_air_pct')).toBeGreaterThan(20);
  });
  test('a unit converted to another fuel: the day of the reading settles which it burned', async () => {
    const converted = [
      { unit: 'A-1', fuel: 'no2_oil' },
      { unit: 'A-1', fuel: 'natural_gas', valid_from: '2024-06-01' },
    ];
    const rows = [
      { o2_pct: 5, taken_at: '2024-05-31' },
      { o2_pct: 5, taken_at: '2024-06-01' },
    ];
    const result = await deriveReadings(rows, { units: converted });
    expect([0, 1].map((row) => cellOf(result, row, 'fuel'))).toEqual(['no2_oil', 'natural_gas']);
    expect(cellOf(result, 0, 'flags')).not.toContain('fuel_ambiguous');
  });
  test('however a fuel is written, it goes by one name', async () => {
    expect((await one({ fuel: 'Natural Gas', o2_pct: 5 }))('fuel')).toBe('natural_gas');
  });
  test('what a unit burned before its conversion counts for readings before it', async () => {
    const converted = [
      { unit: 'A-1', fuel: 'natural_gas', burner: 'atmospheric' },
      { unit: 'A-1', fuel: 'natural_gas', burner: 'power', fuel_air_control: 'linkage', valid_from: '2024-06-01' },
    ];
    expect(await flagsOf({ taken_at: '2024-05-31', o2_pct: 5, air_C: 0 }, { units: converted })).toContain(
      'season_not_removed',
    );
    expect(await flagsOf({ taken_at: '2024-06-02', o2_pct: 5, air_C: 0 }, { units: converted })).not.toContain(
      'season_not_removed',
    );
  });
});

describe('impossible values are unknown, with a flag, never infinite', () => {
  const NUMBERS = derivedSchema.filter(({ kind }) => kind === 'number').map(({ name }) => name);
  const CASES: readonly (readonly [Row, string, readonly string[]])[] = [
    [
      { o2_pct: 20.9, co_ppm: 100, nox_ppm: 40, flue_C: 150, air_C: 20 },
      'o2_impossible',
      ['excess_air_pct', 'co_air_free_ppm', 'efficiency_gross_pct', 'co2_pct'],
    ],
    [{ o2_pct: 21.3 }, 'o2_impossible', ['o2_pct', 'lambda']],
    [{ o2_pct: -0.2 }, 'o2_impossible', ['o2_pct', 'lambda']],
    [{ co2_pct: 13.2 }, 'co2_impossible', ['o2_pct', 'co2_pct', 'lambda']],
    [
      { o2_pct: 5, flue_C: 10, air_C: 20 },
      'flue_below_air',
      ['stack_loss_pct', 'efficiency_gross_pct', 'efficiency_net_pct'],
    ],
    [
      { o2_pct: 5, flue_C: (99_999 - 32) / 1.8, air_C: 20 },
      'flue_impossible',
      ['stack_loss_pct', 'efficiency_gross_pct', 'efficiency_net_pct'],
    ],
    [
      { o2_pct: 5, flue_C: 150, air_C: -60 },
      'air_impossible',
      ['stack_loss_pct', 'efficiency_gross_pct', 'o2_reference_pct', 'co2_reference_pct'],
    ],
    [{ o2_pct: 5, co_ppm: -4 }, 'co_impossible', ['co_air_free_ppm', 'co_at_3pct_o2_ppm', 'co_co2_ratio']],
    [{ o2_pct: 5, co_air_free_ppm: -4 }, 'co_impossible', ['co_air_free_ppm', 'co_co2_ratio']],
    [{ o2_pct: 5, nox_ppm: -4 }, 'nox_impossible', ['nox_at_3pct_o2_ppm']],
    [{ o2_wet_pct: 20.4 }, 'o2_impossible', ['o2_pct', 'lambda']],
    [{ o2_wet_pct: -1 }, 'o2_impossible', ['o2_pct', 'lambda']],
    [{ o2_pct: 20.96, flue_C: 150, air_C: 20 }, 'o2_impossible', ['o2_pct', 'efficiency_gross_pct']],
    [{ fuel: 'hydrogen', co2_pct: 3 }, 'co2_impossible', ['o2_pct', 'co2_pct']],
    [{ o2_pct: 5, flue_C: 150, air_C: 20, fuel: 'kerosine9' }, 'fuel_unknown', ['stack_loss_pct', 'dew_point_C']],
    [{}, 'season_not_removed', NUMBERS],
  ];
  test.each(CASES)('%j: %s', async (row, flag, unknown) => {
    const at = await one(row, flag === 'season_not_removed' ? { units: [{ unit: 'A-1' }] } : undefined);
    expect(String(at('flags')).split(' ')).toContain(flag);
    for (const name of unknown) expect(at(name), name).toBeNaN();
    for (const name of NUMBERS) expect(Math.abs(Number(at(name))), name).not.toBe(Number.POSITIVE_INFINITY);
  });

  test('a CO below its detection limit is a bound and no fault; a loss needs no CO that can be', async () => {
    const below = await one({ o2_pct: 5, co_ppm: '<5' });
    expect(below('co_air_free_ppm')).toBeCloseTo((5 * 20.9) / 15.9, 10);
    expect(below('flags')).not.toContain('co_impossible');
    const negative = await one({ o2_pct: 5, co_ppm: -3, flue_C: 150, air_C: 20 });
    const none = await one({ o2_pct: 5, flue_C: 150, air_C: 20 });
    expect(negative('efficiency_gross_pct')).toBe(none('efficiency_gross_pct'));
  });
  test('a barometer in hPa is set aside with a flag, and the site’s pressure taken', async () => {
    const wrong = await one({ o2_pct: 5, air_C: 20, barometer_kPa: 1013 });
    expect(wrong('flags')).toContain('barometer_impossible');
    expect(wrong('dew_point_C')).toBe((await one({ o2_pct: 5, air_C: 20 }))('dew_point_C'));
  });
  test('hydrogen alone: excess air and efficiency by O2; CO2 is 0 and a ratio to it unknown', async () => {
    const at = await one({ fuel: 'hydrogen', o2_pct: 4, flue_C: 150, air_C: 20, co_ppm: 2 });
    // Stoichiometry: dry flue over air is 1.8869/2.3869 for hydrogen; (computed) excess air 0.7905 x 4/16.95.
    expect(at('excess_air_pct')).toBeCloseTo((100 * 0.7905 * 4) / 16.95, 2);
    expect(at('co2_pct')).toBe(0);
    expect(at('co_co2_ratio')).toBeNaN();
    expect(at('efficiency_gross_pct')).toBeGreaterThan(75);
    for (const name of NUMBERS) expect(Math.abs(Number(at(name))), name).not.toBe(Number.POSITIVE_INFINITY);
  });

  test('0 % O2 is taken as no excess air and flagged', async () => {
    const at = await one({ o2_pct: 0, co_ppm: 50 });
    expect(at('excess_air_pct')).toBe(0);
    expect(at('co_air_free_ppm')).toBeCloseTo(50, 10);
    expect(at('flags')).toContain('o2_zero');
  });
  test('0 % CO2 beside no O2 gives nothing, and no infinity', async () => {
    const at = await one({ co2_pct: 0, co_ppm: 40 });
    for (const name of NUMBERS) expect(at(name), name).toBeNaN();
  });
});

describe('what is missing', () => {
  test('O2 is calculated from CO2 and CO2 from O2, and each says so', async () => {
    const fromCo2 = await one({ co2_pct: 9.0336, co2_from: 'measured' });
    expect(fromCo2('o2_pct')).toBeCloseTo(5, 3);
    expect([fromCo2('o2_from'), fromCo2('co2_from')]).toEqual(['calculated', 'measured']);
    const fromO2 = await one({ o2_pct: 5 });
    expect(fromO2('co2_pct')).toBeCloseTo(9.03, 2);
    expect([fromO2('o2_from'), fromO2('co2_from')]).toEqual(['measured', 'calculated']);
    const neither = await one({ co_ppm: 50 });
    expect([neither('o2_from'), neither('co2_from')]).toEqual(['', '']);
  });
  test('without air temperature the default of 20 ± 8 °C widens the uncertainty and is flagged', async () => {
    const known = await one({ o2_pct: 5, flue_C: 200, air_C: 20 });
    const missing = await one({ o2_pct: 5, flue_C: 200 });
    expect(missing('efficiency_gross_pct')).toBe(known('efficiency_gross_pct'));
    expect(Number(missing('efficiency_gross_pct_sd'))).toBeGreaterThan(2 * Number(known('efficiency_gross_pct_sd')));
    expect(missing('flags')).toContain('air_assumed');
    expect(known('flags')).toBe('');
  });
  test('a missing static pressure makes an unknown drop, not zero', async () => {
    expect((await one({ supply_running_Pa: 2200 }))('supply_drop_Pa')).toBeNaN();
  });
  test('wet O2 is made dry: natural gas 2.5 and 5.15 wet are 3 and 6 dry (computed by trade tables)', async () => {
    expect((await one({ o2_wet_pct: 2.5 }))('o2_pct')).toBeCloseTo(3.0, 1);
    expect(Math.abs(Number((await one({ o2_wet_pct: 5.15 }))('o2_pct')) - 6)).toBeLessThan(0.06);
  });
});

describe('CO', () => {
  test('over the range of the sensor stays a bound: CO at least, efficiency at most', async () => {
    const { tables } = await deriveReadings([
      { o2_pct: 5, co_ppm: '>4000', flue_C: 150, air_C: 20 },
      { o2_pct: 5, co_ppm: 40, flue_C: 150, air_C: 20 },
    ]);
    const column = (name: string) => tables.derived.columns.get(name);
    expect(column('co_air_free_ppm')).toMatchObject({ bounds: Int8Array.of(1, 0) });
    expect(column('efficiency_gross_pct')).toMatchObject({ bounds: Int8Array.of(-1, 0) });
    expect(column('excess_air_pct')).not.toHaveProperty('bounds');
  });
  test('air-free input is taken as it is and flagged', async () => {
    const at = await one({ o2_pct: 9, co_air_free_ppm: 263 });
    expect(at('co_air_free_ppm')).toBe(263);
    expect(at('co_at_3pct_o2_ppm')).toBeCloseTo((263 * 17.9) / 20.9, 10);
    expect(at('flags')).toContain('co_given_air_free');
  });
});
