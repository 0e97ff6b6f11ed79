import { describe, expect, test } from 'vitest';
import type { RegisterResult } from '../../../cells/register/compute.ts';
import { kind } from '../../../cells/register/kind.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import { contextOf, fileOf } from '../../shared/readings/file-of.ts';
import { rowsOf } from '../../shared/readings/read-readings.ts';

async function read(...lines: string[]): Promise<Outcome<RegisterResult>> {
  const file = fileOf('units.csv', lines.length === 0 ? '' : `${lines.join('\n')}\n`);
  const parameters = kind.readParameters({ files: [file.name] });
  return parameters.status === 'value'
    ? kind.compute(parameters.value, new Map(), contextOf([file]), undefined)
    : parameters;
}

async function value(...lines: string[]): Promise<RegisterResult> {
  const outcome = await read(...lines);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const message = async (...lines: string[]): Promise<string> => {
  const outcome = await read(...lines);
  return outcome.status === 'error' ? outcome.message : JSON.stringify(outcome);
};

const known = (row: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(row).filter(([, text]) => text !== ''));

describe('limits in the long form', () => {
  test('from target and tolerance, from lower and upper, and in service', async () => {
    const { tables } = await value(
      'unit,fuel,co2_high_target_pct,co2_high_tolerance_pct,co2_high_service_lower_pct,co2_high_service_upper_pct,o2_low_target_pct,o2_low_lower_pct,o2_low_upper_pct',
      'B-07,natural_gas,8.75,0.25,8.25,9,6.5,5.5,7',
    );
    expect(rowsOf(tables['limits']).map(known)).toEqual([
      {
        unit: 'B-07',
        fuel: 'natural_gas',
        fire: 'high',
        quantity: 'co2_pct',
        target_pct: '8.75',
        setting_lower_pct: '8.5',
        setting_upper_pct: '9',
        service_lower_pct: '8.25',
        service_upper_pct: '9',
      },
      {
        unit: 'B-07',
        fuel: 'natural_gas',
        fire: 'low',
        quantity: 'o2_pct',
        target_pct: '6.5',
        setting_lower_pct: '5.5',
        setting_upper_pct: '7',
      },
    ]);
  });

  test('a fuel and a day each have their own', async () => {
    const { tables } = await value(
      'unit,fuel,valid_from,o2_high_target_pct,o2_high_tolerance_pct',
      'B-07,natural_gas,2024-05-01,5,0.5',
      'B-07,no2_oil,,4,0.5',
      'B-07,natural_gas,,4.5,0.5',
    );
    expect(rowsOf(tables['limits']).map(({ fuel, valid_from, target_pct }) => [fuel, valid_from, target_pct])).toEqual([
      ['natural_gas', '', '4.5'],
      ['natural_gas', '2024-05-01', '5'],
      ['no2_oil', '', '4'],
    ]);
  });
});

describe('units of measure', () => {
  test('heat input, supply and fuel', async () => {
    const { tables } = await value(
      'unit,fuel,heat_input_high_btuh,supply_min_inwc,supply_max_mbar,supply_drop_limit_inwc,annual_fuel_MMBtu,fuel_price,low_fire_share',
      'B-07,natural_gas,1000000,4,35,1,1000,10,65',
    );
    // 1 Btu(IT)/h = 0.29307107 W; 1 in. w.c. = 249.08891 Pa; 1 MMBtu = 293.07107 kWh (SI brochure and NIST SP 811; known: memory).
    expect(Number(rowsOf(tables['units'])[0]['heat_input_high_kW'])).toBeCloseTo(293.07107, 4);
    const [supply] = rowsOf(tables['supply-limits']);
    expect(Number(supply['supply_min_Pa'])).toBeCloseTo(996.35564, 4);
    expect([supply['supply_max_Pa'], Number(supply['drop_limit_Pa']).toFixed(3)]).toEqual(['3500', '249.089']);
    const [money] = rowsOf(tables['economics']);
    expect(Number(money['annual_fuel_kWh'])).toBeCloseTo(293_071.07, 1);
    expect(Number(money['fuel_price_per_kWh'])).toBeCloseTo(10 / 293.07107, 7);
    expect([money['annual_fuel_unit'], money['low_fire_share']]).toEqual(['MMBtu', '0.65']);
  });

  test('a column without its unit is asked about, not guessed', async () => {
    const asked = await message('unit,supply_min', 'B-07,7');
    expect(asked).toContain('"supply_min\\" does not say its unit');
    expect(asked).toContain('"table":"register"');
  });
});

describe('what cannot be is told and counts as unknown', () => {
  test.each([
    ['heat_input_high_kW', '-500', /^heat_input_high: -500 cannot be/],
    ['fuel_price', '-1', /^fuel_price: -1 cannot be/],
    ['low_fire_share', '1.5', /^low_fire_share: 1.5 cannot be \(a share is 0 to 1\)/],
    ['low_fire_share', '-0.2', /^low_fire_share: -0.2 cannot be/],
  ])('%s of %s', async (head, cell, reason) => {
    const { faults, tables } = await value(`unit,fuel,annual_fuel_therm,${head}`, `B-07,natural_gas,10,${cell}`);
    expect(faults.map((fault) => fault.reason)).toEqual([expect.stringMatching(reason)]);
    const known = [...rowsOf(tables['units']), ...rowsOf(tables['economics'])].flatMap((row) => [
      row['heat_input_high_kW'] ?? '',
      row['fuel_price_per_kWh'] ?? '',
      row['low_fire_share'] ?? '',
    ]);
    expect(known.join('')).toBe('');
  });

  test('a lower limit above the upper one', async () => {
    const { faults, tables } = await value('unit,o2_high_lower_pct,o2_high_upper_pct', 'B-07,6,4');
    expect(faults[0].reason).toBe('o2_high_lower_pct (6) lies above o2_high_upper_pct (4); both count as unknown');
    expect(tables['limits'].rows).toBe(0);
  });

  test('a profile answers what the heads do not say', async () => {
    const file = fileOf('units.csv', 'Kennung,Vordruck\nB-07,20\n');
    const profile = {
      table: 'register',
      columns: { Kennung: 'unit', Vordruck: { field: 'supply_min', unit: 'mbar' } },
    };
    const parameters = kind.readParameters({ files: [file.name], profiles: [profile, { table: 'events' }] });
    if (parameters.status !== 'value') throw new Error(JSON.stringify(parameters));
    const outcome = await kind.compute(parameters.value, new Map(), contextOf([file]), undefined);
    if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
    expect(rowsOf(outcome.value.tables['supply-limits'])[0]).toMatchObject({ unit: 'B-07', supply_min_Pa: '2000' });
  });
});

describe('nearly empty registers work', () => {
  test('the unit id alone', async () => {
    const result = await value('unit', 'B-07', 'B-08');
    expect(rowsOf(result.tables['units']).map(({ unit }) => unit)).toEqual(['B-07', 'B-08']);
    expect(['limits', 'supply-limits', 'economics', 'planning'].map((name) => result.tables[name].rows)).toEqual([
      0, 0, 0, 0,
    ]);
    const said = kind
      .describe(result)
      .remarks.map(({ text }) => text)
      .join('\n');
    expect(said).toContain('A target is not known of any unit');
  });

  test('heads and words of another language', async () => {
    const { tables, faults } = await value('Kessel;Brennstoff;Brennerart;Gebäude', 'B-07;Erdgas;Gebläse;Haus Ost');
    expect(known(rowsOf(tables['units'])[0])).toMatchObject({
      unit: 'B-07',
      fuel: 'natural_gas',
      burner: 'power',
      building: 'Haus Ost',
    });
    expect(faults).toEqual([]);
  });
});

describe('bad registers', () => {
  test.each([
    ['empty', [], /^units.csv is empty/],
    ['heads only', ['unit,fuel'], /^units.csv has a head line but no rows/],
    ['no unit column', ['fuel,building', 'natural_gas,A'], /^units.csv has no column for the unit/],
    [
      'a fuel nobody knows',
      ['unit,fuel', 'B-07,natural_gas', 'B-08,natrual_gas'],
      /^units.csv, line 3: nobody knows the fuel "natrual_gas" \(did you mean "natural_gas"\?\)/,
    ],
    ['no table at all', ['hello'], /^units.csv has no usable column/],
  ])('%s', async (_, lines, expected) => expect(await message(...lines)).toMatch(expected));

  test('a cell that is no number counts as unknown and is told once', async () => {
    const result = await value(
      'unit,o2_high_target_pct,o2_high_tolerance_pct',
      'B-07,four,0.5',
      'B-07,5,0.5',
      ',3,0.5',
    );
    expect(result.faults.map(({ line, reason }) => `${line} ${reason}`)).toEqual([
      '3 the same unit, fuel and valid_from as line 2; the first row counts, this one is set aside',
      '4 the row names no unit and is set aside',
      '2 o2_high_target_pct: "four" is neither a number nor a mark for unknown',
    ]);
    expect(kind.describe(result).remarks[0]).toMatchObject({ severity: 'warning' });
  });
});

describe('what is empty', () => {
  const file = fileOf('units.csv', 'unit,fuel,burner\nB-07,,\nB-08,propane,premix\n');
  const withFilled = async (filled: unknown): Promise<RegisterResult> => {
    const parameters = kind.readParameters({ files: [file.name], filled });
    if (parameters.status !== 'value') throw new Error(JSON.stringify(parameters));
    const outcome = await kind.compute(parameters.value, new Map(), contextOf([file]), undefined);
    if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
    return outcome.value;
  };
  const gaps = ({ tables }: RegisterResult, unit: string): string[] =>
    rowsOf(tables['gaps']).flatMap((row) => (row['unit'] === unit ? [row['field']] : []));

  test('is listed unit by unit, with what stands in its place', async () => {
    const result = await withFilled([]);
    expect(gaps(result, 'B-08')).toEqual([
      'air_source',
      'o2_high_target_pct',
      'o2_high_tolerance_pct',
      'supply_min',
      'supply_max',
    ]);
    expect(rowsOf(result.tables['gaps'])[0]).toEqual({
      unit: 'B-07',
      missing: 'Fuel',
      instead: "the reading's own fuel, else natural gas, flagged",
      field: 'fuel',
    });
  });

  test('can be filled in, and what the file says counts more', async () => {
    const result = await withFilled([
      { unit: 'B-07', field: 'fuel', value: 'natural_gas' },
      { unit: 'B-07', field: 'o2_high_target_pct', value: '4.5' },
      { unit: 'B-07', field: 'o2_high_tolerance_pct', value: '0.5' },
      { unit: 'B-07', field: 'supply_min', value: '1740' },
      { unit: 'B-08', field: 'fuel', value: 'no2_oil' },
    ]);
    expect(rowsOf(result.tables['units']).map((row) => row['fuel'])).toEqual(['natural_gas', 'propane']);
    expect(rowsOf(result.tables['limits']).map(known)).toMatchObject([
      {
        unit: 'B-07',
        fire: 'high',
        quantity: 'o2_pct',
        target_pct: '4.5',
        setting_lower_pct: '4',
        setting_upper_pct: '5',
      },
    ]);
    expect(gaps(result, 'B-07')).toEqual(['burner', 'air_source', 'supply_max']);
  });

  test('a field that no register has is refused', () => {
    expect(
      kind.readParameters({ files: [], filled: [{ unit: 'B-07', field: 'burnr', value: 'premix' }] }),
    ).toMatchObject({
      status: 'error',
      message: expect.stringContaining('did you mean "burner"?'),
    });
  });
});

test('targets by heads in another order and language, and what is not read is named', async () => {
  const result = await value(
    'Kessel;Ziel;O2 Sollwert Volllast (%);Target O2 Low (%);Toleranz O2 Volllast (%);Gasdruck min (mbar)',
    'K1;x;4,0;6,0;0,5;17',
  );
  const limits = rowsOf(result.tables['limits']).map(known);
  expect(limits.map(({ fire, target_pct }) => `${fire} ${target_pct}`).sort()).toEqual(['high 4', 'low 6']);
  // 17 mbar are 1700 Pa.
  expect(rowsOf(result.tables['supply-limits'])[0]['supply_min_Pa']).toBe('1700');
  expect(kind.describe(result).remarks.map(({ text }) => text)).toContainEqual(
    expect.stringMatching(/1 column is not read.*"Ziel"/),
  );
});
