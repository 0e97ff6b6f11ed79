/**
 * First-order uncertainty (JCGM 100:2008) against published examples and against Monte Carlo.
 * The examples are those of JCGM 101:2008, clause 9, whose tables give the first-order result beside the Monte Carlo one
 * (from memory).
 */
import { describe, expect, test } from 'vitest';
import { readParameters } from '../../cells/derive/parameters.ts';
import { cellOf, deriveReadings, type Row } from '../cells/derive/derive-readings.ts';
import { calculate } from '../shared/formula/evaluate-formula.ts';

describe('JCGM 101:2008, clause 9', () => {
  test('9.2 additive model, four inputs of standard uncertainty 1: u = 2.0', () => {
    const x = { unit: '1', values: [0], sd: 1 };
    expect(calculate('a + b + c + d', { a: x, b: x, c: x, d: x }).sd[0]).toBeCloseTo(2, 10);
  });

  test('9.3 mass calibration: 1.2340 mg, u = 0.0539 mg', () => {
    const { values, sd } = calculate(
      '(reference + deviation) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100000',
      {
        reference: { unit: '1', values: [100_000], sd: 0.05 },
        deviation: { unit: '1', values: [1.234], sd: 0.02 },
        air: { unit: '1', values: [1.2], sd: 0.2 / Math.sqrt(12) },
        weight: { unit: '1', values: [8000], sd: 2000 / Math.sqrt(12) },
        standard: { unit: '1', values: [8000], sd: 100 / Math.sqrt(12) },
      },
    );
    expect(values[0]).toBeCloseTo(1.234, 4);
    expect(sd[0]).toBeCloseTo(0.0539, 4);
  });

  test('9.4 comparison loss x1² + x2² at x1 = 0.010, u = 0.005: 100e-6, u = 100e-6', () => {
    const { values, sd } = calculate('x1 ** 2 + x2 ** 2', {
      x1: { unit: '1', values: [0.01], sd: 0.005 },
      x2: { unit: '1', values: [0], sd: 0.005 },
    });
    expect(values[0]).toBeCloseTo(100e-6, 12);
    expect(sd[0]).toBeCloseTo(100e-6, 12);
  });
});

/** Seeded uniform numbers (mulberry32), and normal ones by Box and Muller. */
function generator(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: readonly number[]): number => {
  const center = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - center) ** 2, 0) / (values.length - 1));
};

describe('every derived number against Monte Carlo with 8000 draws', () => {
  // The spread of 8000 draws is itself known to 0.8 %; the relations bend a little over the width of the inputs.
  const TOLERANCE = 0.05;
  const COLUMNS = [
    'o2_pct',
    'co2_pct',
    'excess_air_pct',
    'lambda',
    'co_air_free_ppm',
    'co_at_3pct_o2_ppm',
    'co_co2_ratio',
    'nox_at_3pct_o2_ppm',
    'stack_loss_pct',
    'efficiency_gross_pct',
    'efficiency_net_pct',
    'dew_point_C',
    'supply_drop_Pa',
    'o2_reference_pct',
    'co2_reference_pct',
  ];
  const read = readParameters({});
  if (read.status !== 'value') throw new Error('parameters');
  const { classes } = read.value;
  // Everything that is no reading is held exact here, so that the draws vary what the budget varies.
  const exact = Object.fromEntries(
    Object.entries(read.value.exponents).map(([name, row]) => [name, { ...row, temperatureSd: 0, seasonSd: 0 }]),
  );
  const pressure = { barometer_kPa: 101.325 };

  test.each([
    [
      'a dry flue',
      {
        o2_pct: 5,
        co_ppm: 300,
        nox_ppm: 60,
        flue_C: 180,
        air_C: 25,
        supply_static_Pa: 2400,
        supply_running_Pa: 2200,
        fuel: 'methane',
        ...pressure,
      },
    ],
    [
      'a condensing flue',
      {
        o2_pct: 4.5,
        co_ppm: 80,
        nox_ppm: 30,
        flue_C: 44,
        air_C: 15,
        supply_static_Pa: 2400,
        supply_running_Pa: 2000,
        fuel: 'methane',
        ...pressure,
      },
    ],
  ] as readonly (readonly [string, Row])[])('%s', async (_, row) => {
    const normal = generator(20_260_331);
    const vary = (name: keyof (typeof classes)['service']): number => {
      const { absolute, relative } = classes.service[name];
      const value = Number(row[name]);
      return value + normal() * Math.max(absolute, relative * Math.abs(value));
    };
    const varied = ['o2_pct', 'co_ppm', 'nox_ppm', 'flue_C', 'air_C', 'supply_static_Pa', 'supply_running_Pa'] as const;
    const draws = Array.from({ length: 8000 }, () => ({
      ...row,
      ...Object.fromEntries(varied.map((name) => [name, vary(name)])),
      barometer_kPa: 101.325 + 0.2 * normal(),
    }));
    const result = await deriveReadings([row, ...draws], { parameters: { exponents: exact } });
    for (const name of COLUMNS) {
      const sample = draws.map((_draw, i) => Number(cellOf(result, i + 1, name)));
      const sd = Number(cellOf(result, 0, `${name}_sd`));
      expect(Math.abs(spread(sample) / sd - 1), `${name}: ${spread(sample)} against ${sd}`).toBeLessThan(TOLERANCE);
      expect(Math.abs(mean(sample) - Number(cellOf(result, 0, name))), name).toBeLessThan(0.2 * sd);
    }
  });
});
