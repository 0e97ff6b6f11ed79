import { describe, expect, test } from 'vitest';
import { emissionFactor as factorOf, KWH_PER_MMBTU } from '../../cells/savings/emissions.ts';
import { efficiencyAt } from '../../cells/savings/reference-efficiency.ts';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import { fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { knownFuels } from '../../shared/fuels/known-fuels.ts';
import { at, type Row, said, savingsOf } from '../cells/savings/savings-of.ts';

const emissionFactor = (fuel: string): number => factorOf(fuel, knownFuels(undefined)(fuel));

describe('published: DOE Steam Tip Sheet 4 (January 2006), seen in a reprint', () => {
  const tip: readonly Row[] = [
    { state: 'as_found', efficiency_gross_pct: 78.2, o2_pct: 7, o2_reference_pct: 7 },
    { state: 'as_left', efficiency_gross_pct: 83.1, o2_pct: 2, o2_reference_pct: 2 },
  ];

  test('500,000 MMBtu a year from 78.2 to 83.1 % saves 29,482 MMBtu and $235,860 at $8 (result from memory)', async () => {
    const table = await savingsOf(tip, {
      economics: [
        {
          unit: 'U-1',
          fuel: 'natural_gas',
          annual_fuel_kWh: 500_000 * KWH_PER_MMBTU,
          fuel_price_per_kWh: 8 / KWH_PER_MMBTU,
        },
      ],
    });
    expect((at(table, 'fuel_saved_pct') / 100) * 500_000).toBeCloseTo(29_482.55, 1);
    expect(at(table, 'cost_saved')).toBeCloseTo(235_860, -1);
    expect(said(table, 'fuel_use_source')).toBe('register');
    expect(said(table, 'distinguishable')).toBe('yes');
  });

  test('the correction for another O2 agrees with the table: each row from the row of 44.9 % excess air', () => {
    const fuel = findFuel('natural_gas');
    if (fuel.status !== 'value') throw new Error('natural gas');
    // O2 %, then gross efficiency at 200, 300 and 400 °F above the air.
    const rows = [
      [2, 85.4, 83.1, 80.8],
      [3, 85.2, 82.8, 80.4],
      [5, 84.7, 82.1, 79.5],
      [10, 82.8, 79.3, 75.6],
    ] as const;
    const start = [84.1, 81.2, 78.2];
    for (const [o2, ...efficiencies] of rows)
      efficiencies.forEach((efficiency, i) => {
        const net = ((i + 2) * 100) / 1.8;
        const reading = { efficiencyPct: start[i], o2Pct: 7, flueC: 21 + net, airC: 21, dewPointC: 50 };
        // Both ends are printed to a tenth.
        expect(Math.abs(efficiencyAt(reading, o2, 21, fuelProperties(fuel.value)) - efficiency)).toBeLessThan(0.16);
      });
  });
});

describe('published: 40 CFR 98 Tables C-1 and C-2 (seen), A-1 (from memory)', () => {
  test('natural gas 53.06 kg CO2 a MMBtu is 0.18105 kg a kWh; with CH4 and N2O a little more', () => {
    const perMmbtu = emissionFactor('natural_gas') * KWH_PER_MMBTU;
    expect(perMmbtu).toBeCloseTo(53.06 + 0.001 * 28 + 0.0001 * 265, 9);
    expect(emissionFactor('no2_oil') * KWH_PER_MMBTU).toBeCloseTo(73.96 + 0.003 * 28 + 0.0006 * 265, 9);
  });

  test('a fuel without a factor goes by its carbon: pure methane 52.14 kg a MMBtu (computed from ISO 6976)', () => {
    expect(emissionFactor('methane') * KWH_PER_MMBTU).toBeCloseTo(52.14, 1);
    expect(emissionFactor('hydrogen')).toBe(0);
    expect(emissionFactor('unheard_of')).toBeNaN();
  });
});
