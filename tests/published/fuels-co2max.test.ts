/** CO2max and air demand of fuels against tables; the oxygen content of air is stated with each, since three are in use. */
import { describe, expect, test } from 'vitest';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import type { Fuel } from '../../shared/fuels/fuel.ts';
import { fuelProperties } from '../../shared/fuels/fuel-properties.ts';

const fuel = (name: string): Fuel => {
  const found = findFuel(name);
  if (found.status !== 'value') throw new Error(JSON.stringify(found));
  return found.value;
};
const co2max = (name: string): number => fuelProperties(fuel(name)).co2maxPct;

describe('CO2max in practice, ASHRAE Handbook Fundamentals, "Combustion and Fuels" (from memory)', () => {
  test.each([
    ['natural_gas', 11.7, 12.1],
    ['propane', 13.7, 13.8],
    ['butane', 14.0, 14.1],
    ['no2_oil', 15.2, 15.7],
  ])('%s: %s to %s %%', (name, lower, upper) => {
    expect(co2max(name)).toBeGreaterThanOrEqual(lower - 0.05);
    expect(co2max(name)).toBeLessThanOrEqual(upper + 0.05);
  });
});

describe('by chemistry at 20.95 % O2 in air (cross-check, computed independently at 20.9476 %)', () => {
  test.each([
    ['methane', 11.7],
    ['ethane', 13.15],
    ['propane', 13.72],
    ['butane', 14.02],
    ['hydrogen', 0],
  ])('%s: %s %%', (name, expected) => {
    expect(co2max(name)).toBeCloseTo(expected, 1.7);
  });

  test('light heating oil 15.4 % (DIN 51603 fuel, from memory)', () => {
    expect(Math.abs(co2max('no2_oil') - 15.4)).toBeLessThan(0.05);
  });
  test('the default natural gas lies between 11.8 and 11.9 %, as the project promises', () => {
    expect(co2max('natural_gas')).toBeGreaterThan(11.8);
    expect(co2max('natural_gas')).toBeLessThan(11.9);
  });
});

describe('the combustion constants of the gas industry (classic table, seen in a reprint): 79/21 air', () => {
  // Air by volume for 21 % O2: the table divides by 0.21, we by 0.2095.
  test.each([
    ['methane', 9.53, 2.0],
    ['ethane', 16.68, 3.5],
    ['propane', 23.82, 5.0],
    ['hydrogen', 2.38, 0.5],
  ])('%s: %s volumes of air, %s of oxygen', (name, air, oxygen) => {
    const found = fuelProperties(fuel(name));
    const perMole = found.gross / 1e6;
    expect(found.oxygen * perMole).toBeCloseTo(oxygen, 6);
    expect(Math.abs((found.air * perMole * 20.95) / 21 - air)).toBeLessThan(0.02);
  });
});

describe('hydrogen in natural gas lowers CO2max (cross-check, computed: 11.6 at 10 %, 11.3 at 20 %, from 11.87)', () => {
  test.each([
    ['natural_gas_h2_10', 11.6],
    ['natural_gas_h2_20', 11.3],
    ['natural_gas_h2_100', 0],
  ])('%s: %s %%', (name, expected) => {
    expect(Math.abs(co2max(name) - expected)).toBeLessThan(0.06);
  });
});

describe('what a fuel is called', () => {
  test('case, spaces and hyphens do not matter', () => {
    expect(fuel('Natural Gas').name).toBe('natural_gas');
    expect(fuel('no2-oil').name).toBe('no2_oil');
  });
  test('an unknown one is named with the nearest', () => {
    expect(findFuel('propan')).toMatchObject({
      status: 'error',
      message: expect.stringContaining('did you mean propane?'),
    });
    expect(findFuel('coal dust')).toMatchObject({ status: 'error', message: expect.stringContaining('is not known.') });
    expect(findFuel('natural_gas_h2_140')).toMatchObject({ status: 'error', message: expect.stringContaining('100') });
  });
});
