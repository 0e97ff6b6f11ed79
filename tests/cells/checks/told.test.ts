import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/checks/kind.ts';
import { readCorrections } from '../../../shared/corrections/read-corrections.ts';
import { rowsOf } from '../../shared/readings/read-readings.ts';
import { type Cells, check, findings, names, readingsOf, years } from './check-rows.ts';

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
    const readings = await readingsOf(rows);
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
