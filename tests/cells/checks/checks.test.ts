import { describe, expect, test } from 'vitest';
import type { ChecksResult } from '../../../cells/checks/compute.ts';
import { kind } from '../../../cells/checks/kind.ts';
import type { CellResult } from '../../../shared/cell.ts';
import { readCorrections } from '../../../shared/corrections/read-corrections.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { contextOf } from '../../shared/readings/file-of.ts';
import { accepted, rowsOf } from '../../shared/readings/read-readings.ts';

/** Natural gas reads about 9.1 % CO2 at 4.9 % O2 (CO2max 11.9: 11.9 (20.95 - 4.9) / 20.95; stoichiometry). */
const HEAD =
  'unit,taken_at,fire,state,technician,o2_pct,co2_pct,co2_from,co_ppm,co_air_free_ppm,flue_C,air_C,water_return_C,supply_static_Pa,supply_running_Pa,manifold_Pa,efficiency_printed_pct,excess_air_printed_pct,analyzer,calibrated_on,co_ambient_ppm,adjusted,firing_rate_pct,water_supply_C';

type Cells = Readonly<Record<string, string | number>>;

const line = (cells: Cells): string =>
  HEAD.split(',')
    .map((name) =>
      String(
        cells[name] ??
          ({ unit: 'A-1', taken_at: '2024-03-13T10:00', fire: 'high', state: 'as_found', o2_pct: 4.9 } as Cells)[
            name
          ] ??
          '',
      ),
    )
    .join(',');

async function check(rows: readonly Cells[], parameters: Cells = {}): Promise<ChecksResult> {
  const readings = await accepted(`${[HEAD, ...rows.map(line)].join('\n')}\n`);
  const register = {
    tables: {
      units: makeTable([
        ['unit', textColumn(['A-1', 'A-2', 'A-3'])],
        ['fuel', textColumn(['natural_gas', 'natural_gas', 'no2_oil'])],
        ['building', textColumn(['House', 'House', 'Barn'])],
        ['installed_on', { kind: 'date', values: Float64Array.of(14_000, Number.NaN, Number.NaN) }],
      ]),
      // 7 to 10.5 in. w.c.
      'supply-limits': makeTable([
        ['unit', textColumn(['A-2'])],
        ['supply_min_Pa', numberColumn('Pa', Float64Array.of(1744))],
        ['supply_max_Pa', numberColumn('Pa', Float64Array.of(2615))],
      ]),
    },
  };
  const read = kind.readParameters(parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const inputs = new Map<string, CellResult>([
    ['readings', readings],
    ['register', register],
  ]);
  const outcome = await kind.compute(read.value, inputs, contextOf(), undefined);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

const names = (result: ChecksResult): string[] => [
  ...new Set(rowsOf(result.tables['findings']).map((row) => row['check'])),
];

/** Ten readings of one unit in ten years, high fire, with nothing wrong. */
const years = (cells: (i: number) => Cells): Cells[] =>
  Array.from({ length: 10 }, (_, i) => ({
    taken_at: `20${14 + i}-03-1${i}T09:00`,
    o2_pct: 4.9 + (i % 3) / 10,
    ...cells(i),
  }));

describe('each fault is found by its check, and only by it', () => {
  test.each<[string, readonly Cells[]]>([
    ['o2_out_of_range', [{ o2_pct: 31 }]],
    ['probe_in_air', [{ o2_pct: 20.4, flue_C: 140 }]],
    ['co2_over_max', [{ co2_pct: 13.1 }]],
    ['o2_and_co2_exclude_each_other', [{ o2_pct: 9, co2_pct: 10.5, co2_from: 'measured' }]],
    ['co2_disagrees', [{ co2_pct: 9.9, co2_from: 'measured' }]],
    // 13.7 is propane's CO2max: 13.7 (20.95 - 6) / 20.95 = 9.8.
    ['other_fuel_chosen', [{ o2_pct: 6, co2_pct: 9.8, co2_from: 'calculated' }]],
    ['temperature_out_of_range', [{ flue_C: 2140 }]],
    ['negative_value', [{ co_ppm: -12 }]],
    ['flue_colder_than_air', [{ flue_C: 21, air_C: 140 }].map((cells) => ({ ...cells, air_C: 60 }))],
    ['flue_colder_than_water', [{ flue_C: 30, water_return_C: 60 }]],
    ['manifold_over_supply', [{ manifold_Pa: 2490, supply_running_Pa: 1700 }]],
    // 140 °F is 60 °C; supply water of 75 °C stands before the flue gas cools in the return.
    ['flue_colder_than_water', [{ flue_C: 30, water_supply_C: 75 }]],
    ['probe_in_air', [{ o2_pct: '', co2_pct: 0.3, flue_C: 140 }]],
    ['fire_and_rate_disagree', [{ fire: 'low', firing_rate_pct: 92 }]],
    ['as_left_missing', [{ adjusted: 'yes' }]],
    // 21.8 mbar written into a column of in. w.c. (2180 Pa is within the plate, 5430 is not).
    ['pressure_unit', [{ unit: 'A-2', supply_running_Pa: 5430 }]],
    // 100 raw at 9 % O2: 100 x 17.9 / 11.9 = 150 at 3 % O2, 176 air-free.
    ['air_free_mismatch', [{ o2_pct: 9, co_ppm: 400, co_air_free_ppm: 602 }]],
    [
      'co_never_moves',
      [...years((i) => ({ co_ppm: 0, o2_pct: i })), ...years((i) => ({ co_ppm: 0, o2_pct: i, fire: 'low' }))],
    ],
    ['ambient_co', [{ co_ambient_ppm: 15 }]],
    ['calibration_overdue', [{ calibrated_on: '2022-01-10' }]],
    // k O2 / (20.95 - O2) with k = 0.9: 4.9 % O2 is about 27 % excess air.
    ['excess_air_mismatch', [{ excess_air_printed_pct: 60 }]],
    ['air_ratio_as_percent', [{ excess_air_printed_pct: 1.28 }]],
    // 150 raw at 9 % O2 is 263 air-free, and 463 when converted twice (20.9 / (20.9 - 9) = 1.756).
    ['air_free_mismatch', [{ o2_pct: 9, co_ppm: 150, co_air_free_ppm: 463 }]],
    ['efficiency_mismatch', [{ flue_C: 200, air_C: 20, efficiency_printed_pct: 70 }]],
    [
      'left_before_found',
      [{ taken_at: '2024-03-13T10:00' }, { taken_at: '2024-03-13T09:00', state: 'as_left', o2_pct: 5.4 }],
    ],
    [
      'as_left_copied',
      [
        { co_ppm: 20, flue_C: 90 },
        { taken_at: '2024-03-13T10:30', state: 'as_left', co_ppm: 20, flue_C: 90 },
      ],
    ],
    ['cold_start', [{ flue_C: 90 }, { taken_at: '2024-03-13T10:30', state: 'as_left', o2_pct: 5.1, flue_C: 125 }]],
    [
      'fires_swapped',
      [
        { fire: 'high', flue_C: 90, supply_running_Pa: 1900, manifold_Pa: 300 },
        { fire: 'low', flue_C: 130, supply_running_Pa: 1700, manifold_Pa: 800 },
      ],
    ],
    ['clock_wrong', [{ taken_at: '2000-01-01T00:12' }]],
    ['two_units_one_minute', [{ analyzer: 'An-1' }, { unit: 'A-2', analyzer: 'An-1' }]],
    [
      'sensor_floor',
      ['09:00', '09:20', '09:40', '10:00'].map((time, i) => ({
        unit: `A-${1 + (i % 3)}`,
        fire: i % 2 ? 'low' : 'high',
        taken_at: `2024-03-13T${time}`,
        analyzer: 'An-1',
        co_ppm: 14 + i,
      })),
    ],
    // 190 °C read as 374: the same flue in °F.
    ['fahrenheit_for_celsius', years((i) => ({ flue_C: i === 7 ? 374 : 188 + i }))],
    // 17.4 mbar written into a column of in. w.c.: 2.49 times too much.
    ['pressure_unit', years((i) => ({ supply_running_Pa: i === 7 ? 4334 : 1730 + 5 * i }))],
    [
      'twins_swapped',
      [
        ...years((i) => ({ unit: 'A-1', o2_pct: i === 9 ? 7.9 : 4.9 })),
        ...years((i) => ({ unit: 'A-2', o2_pct: i === 9 ? 4.9 : 8, taken_at: `20${14 + i}-03-1${i}T11:00` })),
      ],
    ],
    [
      'sample_air_leak',
      ['A-1', 'A-2', 'A-3'].flatMap((unit, i) => [
        {
          unit,
          taken_at: `2023-03-13T0${8 + i}:00`.replace('010', '10'),
          state: 'as_left',
          o2_pct: 5,
          co_ppm: 30,
          flue_C: 150,
          analyzer: 'An-2',
        },
        {
          unit,
          taken_at: `2024-03-13T0${8 + i}:00`.replace('010', '10'),
          state: 'as_found',
          o2_pct: 7.5,
          co_ppm: 25,
          flue_C: 151,
          analyzer: 'An-3',
        },
      ]),
    ],
    [
      'rounded_values',
      Array.from({ length: 24 }, (_, i) => ({
        taken_at: `20${10 + (i % 12)}-0${1 + (i % 9)}-11T0${i % 9}:00`,
        technician: 'VW',
        o2_pct: 4 + (i % 5) / 2,
      })),
    ],
    [
      'efficiency_basis',
      years((i) => ({ flue_C: 180, air_C: 20, o2_pct: 5, efficiency_printed_pct: i === 6 ? 92.2 : 83.2 })),
    ],
  ])('%s', async (name, rows) => expect(names(await check(rows))).toEqual([name]));

  test('nothing is found where nothing is wrong', async () => {
    const result = await check(
      years((i) => ({
        co2_pct: (11.9 * (1 - (4.9 + (i % 3) / 10) / 20.95)).toFixed(1),
        co_ppm: i,
        flue_C: 150 + i,
        air_C: 20,
        supply_static_Pa: 1900,
        supply_running_Pa: 1700 + i,
        manifold_Pa: 800,
        excess_air_printed_pct: 27 + i / 4,
        water_return_C: 60,
      })),
    );
    expect(rowsOf(result.tables['findings'])).toEqual([]);
  });
});

const findings = (result: ChecksResult): ReturnType<typeof rowsOf> => rowsOf(result.tables['findings']);

describe('an export with one fault is one line', () => {
  // Siegert: 100 - 160 (0.66 / 16 + 0.009) = 92 net, 83 gross, for 5 % O2 and 160 K above the air.
  const gross = { flue_C: 180, air_C: 20, o2_pct: 5, efficiency_printed_pct: 83.2, analyzer: 'An-1' };

  test('notes of one file and analyzer are told together, with the count and the lines', async () => {
    const list = findings(
      await check(years((i) => (i < 6 ? gross : { ...gross, analyzer: 'An-2', efficiency_printed_pct: 92.2 }))),
    );
    expect(list).toHaveLength(1);
    expect(list[0]).toMatchObject({ check: 'efficiency_basis', readings: '4', source_lines: '8-11' });
    expect(list[0]['finding']).toContain('are net where');
    expect(list[0]['finding']).toContain('4 readings of analyzer An-2 in export.csv, 2020-03-16 to 2023-03-19');
  });

  test('an efficiency that fits another fuel names it', async () => {
    // Oil, gross over net 1.066: 92.0 / 1.066 is not far from (100 - 160 (0.68 / 16 + 0.007)) / 1.066 = 86.4.
    const list = findings(await check(years(() => ({ ...gross, efficiency_printed_pct: 86.4 }))));
    expect(list.map((row) => row['check'])).toEqual(['efficiency_mismatch']);
    expect(list[0]['finding']).toContain('fit no2 oil (gross)');
  });

  test('an efficiency that fits the temperatures in °F only names the scale', async () => {
    // 356 °F is 180 °C, 68 °F is 20 °C.
    const list = findings(
      await check(years(() => ({ ...gross, flue_C: 356, air_C: 68, efficiency_printed_pct: 92.2 }))),
    );
    expect(list.map((row) => row['check'])).toEqual(['efficiency_shows_other_scale']);
    expect(list[0]).toMatchObject({ severity: 'suspect', readings: '10' });
  });

  test('an air ratio, a CO of another basis, a CO2 of another fuel: the whole column is named', async () => {
    const list = findings(
      await check(
        years((i) => ({
          o2_pct: 9,
          co2_pct: 7.8,
          co2_from: 'calculated',
          co_ppm: 300 + i,
          co_air_free_ppm: 300 + i,
          excess_air_printed_pct: 1.68,
        })),
      ),
    );
    const told = list.map((row) => row['finding']).join('\n');
    // CO2max of propane 13.7: 13.7 (20.95 - 9) / 20.95 = 7.8.
    expect(told).toContain('CO2 was calculated for propane where the unit burns natural gas: 10 readings');
    expect(told).toContain('The column of air-free CO holds raw CO: 10 readings');
    expect(told).toContain('air ratios (lambda)');
  });
});

describe('repairs are proposed as corrections, and nothing is changed', () => {
  const repairs = async (rows: readonly Cells[]): Promise<ReturnType<typeof rowsOf>> => {
    const result = await check(rows);
    const readings = await accepted(`${[HEAD, ...rows.map(line)].join('\n')}\n`);
    expect(rowsOf(result.tables['accepted'])).toEqual(rowsOf(readings.tables['accepted']));
    return rowsOf(result.tables['repairs']);
  };

  test('fires swapped', async () => {
    const [repair, ...more] = await repairs([
      { fire: 'high', flue_C: 90, supply_running_Pa: 1900, manifold_Pa: 300 },
      { fire: 'low', flue_C: 130, supply_running_Pa: 1700, manifold_Pa: 800 },
    ]);
    expect(more).toEqual([]);
    const corrections = JSON.parse(repair['corrections']) as readonly unknown[];
    const read = readCorrections(
      corrections.map((one) => ({ ...(one as object), reason: 'r', initials: 'AB', made_on: '2024-04-01' })),
    );
    expect(read).toMatchObject({
      status: 'value',
      value: [
        { action: 'change', row: { fire: 'high', nth: 1 }, column: 'fire', value: 'low' },
        { action: 'change', row: { fire: 'low' }, column: 'fire', value: 'high' },
      ],
    });
  });

  test('twins swapped: one swap of the visit', async () => {
    const rows = [
      ...years((i) => ({ unit: 'A-1', o2_pct: i === 9 ? 7.9 : 4.9 })),
      ...years((i) => ({ unit: 'A-2', o2_pct: i === 9 ? 4.9 : 8, taken_at: `20${14 + i}-03-1${i}T11:00` })),
    ];
    const list = await repairs(rows);
    expect(list.map((row) => JSON.parse(row['corrections']))).toEqual([
      [{ action: 'swap_units', units: ['A-1', 'A-2'], visited_on: '2023-03-19' }],
    ]);
  });

  test('a scale is only proposed with the air temperature as a second witness', async () => {
    const hot = (air: number): Cells[] =>
      years((i) => ({ flue_C: i === 7 ? 374 : 188 + i, air_C: i === 7 ? air : 20 }));
    expect(await repairs(hot(20))).toEqual([]);
    // 374 °F is 190 °C, 68 °F is 20 °C.
    const [repair] = await repairs(hot(68));
    expect(JSON.parse(repair['corrections'])).toMatchObject([
      { column: 'flue_C', value: '190' },
      { column: 'air_C', value: '20' },
    ]);
  });
});

describe('what the findings do', () => {
  test('an impossible value is left out, its reading stays', async () => {
    const [row] = rowsOf((await check([{ o2_pct: 31, co_ppm: 12 }])).tables['accepted']);
    expect([row['o2_pct'], row['co_ppm']]).toEqual(['', '12']);
  });

  test('suspect readings are in or out by a switch', async () => {
    const rows = [{ o2_pct: 20.4, co_ppm: 2 }, { taken_at: '2024-05-13' }];
    expect((await check(rows)).tables['accepted'].rows).toBe(2);
    const out = await check(rows, { suspects: 'out' });
    expect(rowsOf(out.tables['accepted']).map((row) => row['taken_at'])).toEqual(['2024-05-13']);
    expect(rowsOf(out.tables['findings'])[0]).toMatchObject({
      check: 'probe_in_air',
      effect: 'reading left out',
      source_lines: '2',
    });
  });

  test('a high CO keeps its reading in and is told first', async () => {
    const out = await check([{ o2_pct: 20.4, co_ppm: '>4000' }], { suspects: 'out' });
    expect(out.tables['accepted'].rows).toBe(1);
    expect(out.remarks[0]).toMatchObject({ severity: 'danger', text: expect.stringContaining('4000 ppm CO') });
  });

  test('a high CO beside an impossible value is told first, and counts', async () => {
    const out = await check([{ o2_pct: 31, co_ppm: 900 }]);
    expect(rowsOf(out.tables['accepted'])[0]).toMatchObject({ o2_pct: '', co_ppm: '900' });
    expect(out.remarks[0]).toMatchObject({ severity: 'danger', text: expect.stringContaining('900 ppm CO') });
  });

  test('a check can be skipped, and only one that exists', async () => {
    expect(names(await check([{ o2_pct: 31 }], { skip: ['o2_out_of_range'] as unknown as string }))).toEqual([]);
    expect(kind.readParameters({ skip: ['o2_out_of_rnge'] })).toMatchObject({
      status: 'error',
      message: expect.stringContaining('did you mean "o2_out_of_range"?'),
    });
  });
});
