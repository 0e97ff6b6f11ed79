/**
 * Air-free carbon monoxide, CO x 20.9 / (20.9 - O2), and its worked examples as taught (a trade school page and trade press,
 * seen). The examples round the dilution factor; exact arithmetic is beside them.
 */
import { describe, expect, test } from 'vitest';
import { relationsAt } from '../shared/combustion/relations-at.ts';

describe('worked examples', () => {
  test.each([
    [87, 5, 114, 114.36],
    [50, 7, 75, 75.18],
    [1200, 6, 1680, 1683.2],
  ])('%s ppm at %s %% O2: %s ppm air-free as printed, %s exactly', (co, o2, printed, exact) => {
    const { value } = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': co, 'reading.o2_pct': o2 } })(
      'co_air_free_ppm',
    );
    expect(value).toBeCloseTo(exact, exact < 1000 ? 2 : 1);
    expect(Math.abs(value / printed - 1)).toBeLessThan(0.005);
  });
});

test('150 ppm at 9 % O2 is 263 air-free; given air-free, 263 stays 263 (twice converted it would be 463)', () => {
  const raw = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 150, 'reading.o2_pct': 9 } });
  expect(raw('co_air_free_ppm').value).toBeCloseTo(263.4, 1);
  const given = relationsAt('natural_gas', { inputs: { 'reading.co_air_free_ppm': 263, 'reading.o2_pct': 9 } });
  expect(given('co_air_free_ppm').value).toBe(263);
});

test('400 ppm is not one number: 400 at 3 % O2 is 467 air-free; 100 at 7 % is 150 air-free and 129 at 3 %', () => {
  // Arithmetic of the same relation, as practitioners quote it (common practice, no source).
  const first = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 400, 'reading.o2_pct': 3 } });
  expect(first('co_air_free_ppm').value).toBeCloseTo(467, 0);
  const second = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 100, 'reading.o2_pct': 7 } });
  expect(second('co_air_free_ppm').value).toBeCloseTo(150, 0);
  expect(second('co_at_3pct_o2_ppm').value).toBeCloseTo(129, 0);
});

test('CO/CO2 ratio: 0.0040, the action limit, is 350 ppm at 8.75 % CO2 (guidance of a heating industry body, 2013, seen)', () => {
  const at = relationsAt('natural_gas', { inputs: { 'reading.co_ppm': 350, 'reading.co2_pct': 8.75 } });
  expect(at('co_co2_ratio').value).toBeCloseTo(0.004, 10);
});

test('air-free CO, CO at 3 % and the CO/CO2 ratio do not change when air leaks into the sample (algebra)', () => {
  const dilute = (share: number) =>
    relationsAt('natural_gas', {
      inputs: {
        'reading.co_ppm': 100 * (1 - share),
        'reading.o2_pct': 4 * (1 - share) + 20.9 * share,
        'reading.co2_pct': 9.6 * (1 - share),
      },
    });
  for (const name of ['co_air_free_ppm', 'co_at_3pct_o2_ppm', 'co_co2_ratio'])
    expect(dilute(0.2)(name).value / dilute(0)(name).value).toBeCloseTo(1, 10);
});

test('by CO2: CO x CO2max / CO2 is the same number (form of the trade school page, seen)', () => {
  const at = relationsAt('natural_gas', {
    inputs: { 'reading.co_ppm': 87, 'reading.o2_pct': 5, 'reading.co2_pct': 9.034 },
    co2From: 'measured',
  });
  // 20.9 in the one and 20.95 in the other: 0.1 %.
  expect(Math.abs(at('co_air_free_from_co2_ppm').value / 114.36 - 1)).toBeLessThan(0.002);
});

describe('Fo = (20.9 - O2) / CO2, with CO: CO2 + CO and O2 - 0.5 CO (text of Method 3B 12.3.1, seen)', () => {
  const fo = (o2: number, co2: number, co?: number): number =>
    relationsAt('natural_gas', {
      inputs: {
        'reading.o2_pct': o2,
        'reading.co2_pct': co2,
        ...(co === undefined ? {} : { 'reading.co_ppm': co }),
      },
      co2From: 'measured',
    })('fuel_factor_fo').value;
  test('arithmetic of the text', () => {
    expect(fo(5, 9)).toBeCloseTo(15.9 / 9, 10);
    expect(fo(1, 10.8, 10_000)).toBeCloseTo((20.9 - (1 - 0.5)) / (10.8 + 1), 10);
  });
  test('natural gas falls inside the window of table 3B-1, 1.600 to 1.836 (from memory)', () => {
    expect(fo(5, 9)).toBeGreaterThan(1.6);
    expect(fo(5, 9)).toBeLessThan(1.836);
  });
});
