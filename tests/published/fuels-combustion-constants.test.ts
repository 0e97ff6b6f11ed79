/**
 * The "combustion constants" of the gas industry (classic table, seen in a reprint; its air is 79/21 by volume and 76.8/23.2
 * by mass): oxygen, air and products of pure fuels by mass and by volume. Ours is by stoichiometry with IUPAC masses and
 * 20.95 % oxygen, so that mass figures are held to the table's two decimals plus 0.6 %, its rounding of air.
 * Propane and butane rows are from memory.
 */
import { describe, expect, test } from 'vitest';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import { fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { gasQuality } from '../../shared/fuels/gas-quality.ts';
import { GAS_COMPONENTS } from '../../shared/fuels/gas-table.ts';
import { idealHeatingValues } from '../../shared/fuels/ideal-heating-values.ts';
import { convert } from '../../shared/quantities/convert.ts';

const M = { C: 12.011, H: 1.008, S: 32.06 };
const O2 = 31.9988e-3;

/** By mass fractions of the elements; the heating value has no part in it. */
function byMass(atoms: { readonly C?: number; readonly H?: number; readonly S?: number }) {
  const parts = (['C', 'H', 'S'] as const).map((each) => (atoms[each] ?? 0) * M[each]);
  const whole = parts.reduce((sum, part) => sum + part, 0);
  const mass = { C: parts[0] / whole, H: parts[1] / whole, S: parts[2] / whole };
  const found = fuelProperties({ composition: { kind: 'ultimate', mass, grossJperKg: 1e6 } });
  return { oxygen: found.oxygen * O2, co2: (mass.C / M.C) * 44.0095, water: found.water * 18.01528e-3 };
}

describe('by mass: oxygen, air, CO2 and water for a pound of fuel', () => {
  test.each([
    ['hydrogen', { H: 2 }, 7.94, 34.34, 0, 8.94],
    ['methane', { C: 1, H: 4 }, 3.99, 17.27, 2.74, 2.25],
    ['acetylene', { C: 2, H: 2 }, 3.07, 13.3, 3.38, 0.69],
    ['ethylene', { C: 2, H: 4 }, 3.42, 14.81, 3.14, 1.29],
    ['ethane', { C: 2, H: 6 }, 3.73, 16.12, 2.93, 1.8],
    ['carbon', { C: 1 }, 2.66, 11.53, 3.66, 0],
    ['propane (from memory)', { C: 3, H: 8 }, 3.63, 15.7, 2.99, 1.63],
    ['butane (from memory)', { C: 4, H: 10 }, 3.58, 15.49, 3.03, 1.55],
  ] as const)('%s', (_, atoms, oxygen, air, co2, water) => {
    const found = byMass(atoms);
    const near = (value: number, expected: number): void =>
      expect(Math.abs(value - expected)).toBeLessThan(0.006 + 0.001 * expected);
    near(found.oxygen, oxygen);
    near(found.co2, co2);
    near(found.water, water);
    expect(Math.abs(found.oxygen / 0.232 / air - 1)).toBeLessThan(0.006);
  });
  test('sulfur takes its weight of oxygen: 1.00, air 4.29 (seen)', () => {
    expect(byMass({ S: 1 }).oxygen).toBeCloseTo(1, 2);
    expect(Math.abs(byMass({ S: 1 }).oxygen / 0.232 / 4.29 - 1)).toBeLessThan(0.006);
  });
});

describe('by volume: oxygen, air at 21 % oxygen, products', () => {
  test.each([
    ['hydrogen', 0.5, 2.38, 0, 1, 1.88],
    ['carbon_monoxide', 0.5, 2.38, 1, 0, 1.88],
    ['methane', 2, 9.53, 1, 2, 7.53],
    ['ethane', 3.5, 16.68, 2, 3, 13.18],
  ])('%s', (name, oxygen, air, co2, water, nitrogen) => {
    const found = fuelProperties({ composition: { kind: 'gas', moles: { [name]: 1 } } });
    const perMole = found.gross / 1e6;
    expect(found.oxygen * perMole).toBeCloseTo(oxygen, 9);
    expect(Math.abs((oxygen * 100) / 21 - air)).toBeLessThan(0.02);
    expect(Math.abs((found.air * perMole * 20.95) / 21 - air)).toBeLessThan(0.02);
    expect(found.carbonDioxide * perMole).toBeCloseTo(co2, 9);
    expect(found.water * perMole).toBeCloseTo(water, 9);
    expect(Math.abs(oxygen * (79 / 21) - nitrogen)).toBeLessThan(0.02);
  });
});

describe('heating values, Btu/ft3, older than ISO 6976:2016, which we follow: within 1.3 %', () => {
  test.each([
    ['hydrogen', 325],
    ['carbon_monoxide', 322],
    ['methane', 1013],
    ['ethane', 1792],
  ])('%s: %s', (name, gross) => {
    const found = idealHeatingValues({ [name]: 1 }, 'at60F', (60 - 32) / 1.8);
    expect(Math.abs(convert(found.grossPerM3, 'MJ/m3', 'Btu/ft3') / gross - 1)).toBeLessThan(0.013);
  });
});

describe('ISO 6976:2016 table 3, kJ/mol at 0, 15 °C, 60 °F, 20 and 25 °C, as a thermodynamics library carries it (secondary)', () => {
  test.each([
    ['methane', 16.04246, [892.92, 891.51, 891.46, 891.05, 890.58]],
    ['ethane', 30.06904, [1564.35, 1562.14, 1562.06, 1561.42, 1560.69]],
    ['propane', 44.09562, [2224.03, 2221.1, 2220.99, 2220.13, 2219.17]],
    ['n_butane', 58.1222, [2883.35, 2879.76, 2879.63, 2878.58, 2877.4]],
    ['i_butane', 58.1222, [2874.21, 2870.58, 2870.45, 2869.39, 2868.2]],
    ['n_pentane', 72.14878, [3542.91, 3538.6, 3538.45, 3537.19, 3535.77]],
    ['i_pentane', 72.14878, [3536.01, 3531.68, 3531.52, 3530.25, 3528.83]],
    ['neo_pentane', 72.14878, [3521.75, 3517.44, 3517.28, 3516.02, 3514.61]],
    ['n_hexane', 86.17536, [4203.24, 4198.24, 4198.06, 4196.6, 4194.95]],
    ['n_heptane', 100.20194, [4862.88, 4857.18, 4856.98, 4855.31, 4853.43]],
    ['ethylene', 28.05316, [1413.55, 1412.12, 1412.07, 1411.65, 1411.18]],
    ['propylene', 42.07974, [2061.57, 2059.43, 2059.35, 2058.73, 2058.02]],
    ['benzene', 78.11184, [3305.12, 3302.9, 3302.81, 3302.16, 3301.43]],
    ['hydrogen', 2.0159, [286.63, 286.15, 286.15, 285.99, 285.83]],
    ['carbon_monoxide', 28.01, [282.8, 282.91, 282.91, 282.95, 282.98]],
  ])('%s', (name, molarMass, [at0C, at15C, at60F, at20C, at25C]) => {
    expect(GAS_COMPONENTS.get(name)).toMatchObject({ molarMass, gross: { at0C, at15C, at60F, at20C, at25C } });
  });
});

describe('what fuels are in practice', () => {
  const of = (name: string) => {
    const found = findFuel(name);
    if (found.status !== 'value') throw new Error(name);
    return found.value;
  };
  test('natural gas: 1026 Btu/scf (40 CFR 98 table C-1, seen) and 1020 (AP-42, secondary); our composition within 2.5 %', () => {
    const { composition } = of('natural_gas');
    if (composition.kind !== 'gas') throw new Error('gas');
    const found = idealHeatingValues(composition.moles, 'at60F', (60 - 32) / 1.8);
    const gross = convert(found.grossPerM3, 'MJ/m3', 'Btu/ft3');
    for (const published of [1026, 1020]) expect(Math.abs(gross / published - 1)).toBeLessThan(0.025);
    expect(gasQuality(composition.moles).relativeDensity).toBeLessThan(0.65);
  });
  test('light heating oil (DIN 51603, from memory): gross 45.4 to 45.6, net 42.7 to 42.8 MJ/kg', () => {
    const { gross, netOverGross } = fuelProperties(of('no2_oil'));
    expect(gross / 1e6).toBeGreaterThanOrEqual(45.4);
    expect(gross / 1e6).toBeLessThanOrEqual(45.6);
    expect((gross * netOverGross) / 1e6).toBeGreaterThan(42.6);
    expect((gross * netOverGross) / 1e6).toBeLessThan(42.9);
  });
  test('latent heat: some 11 % of net heat for gas and 6 % for oil (a technical lexicon, seen)', () => {
    expect(100 / fuelProperties(of('natural_gas')).netOverGross - 100).toBeCloseTo(11, 0);
    expect(Math.abs(100 / fuelProperties(of('no2_oil')).netOverGross - 100 - 6)).toBeLessThan(0.9);
  });
  test('about 0.15 l of water for a kWh of gas (enmanreg.org, seen)', () => {
    expect(fuelProperties(of('natural_gas')).water * 18.015e-3 * 3.6).toBeCloseTo(0.15, 1);
  });
});
