import { describe, expect, test } from 'vitest';
import { rowsOf } from '../../shared/readings/read-readings.ts';
import { type Cells, check, names, years } from './check-rows.ts';

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
