/**
 * The dew point of water in flue gas.
 * Published: about 59 °C for stoichiometric natural gas (enmanreg.org, seen). The rest of the table is a cross-check
 * computed independently from stoichiometry (dry air with 20.9476 % O2 and 0.03 % CO2, 101.325 kPa) and the IAPWS
 * saturation line in its Wagner form; no published list of points of the curve was found. Agreement within 0.15 K: it
 * prints a tenth, and its air differs in the fourth digit.
 * Not followed: a circulating sample calculation that finds 18.6 % water at 9.15 % CO2 and 4 % O2; stoichiometry gives 15.5 %.
 */
import { describe, expect, test } from 'vitest';
import { saturationPressurePa, saturationTemperatureK } from '../../shared/combustion/saturation.ts';
import { relationsAt } from '../shared/combustion/relations-at.ts';

/** CH1.72, the oil of the table, by mass; its heating value has no part in a dew point. */
const carbon = 12.011 / (12.011 + 1.72 * 1.008);
const OIL = {
  composition: { kind: 'ultimate', mass: { C: carbon, H: 1 - carbon }, grossJperKg: 45.4e6 },
} as const;

const TABLE: readonly (readonly [excessAir: number, methane: number, propane: number, oil: number])[] = [
  [0, 59.2, 54.9, 49.4],
  [10, 57.3, 53.0, 47.6],
  [15, 56.5, 52.2, 46.8],
  [20, 55.7, 51.4, 46.0],
  [30, 54.1, 49.9, 44.5],
  [50, 51.4, 47.2, 41.9],
  [100, 46.0, 41.9, 36.7],
];

/** O2 in dry flue gas at an excess air, from the fuel's k = dry flue gas over air. */
const o2At = (excessAirPct: number, k: number): number => (20.95 * excessAirPct) / (100 * k + excessAirPct);

describe('cross-check over excess air', () => {
  test.each(TABLE)('%s %%: methane %s, propane %s, oil %s °C', (excessAir, methane, propane, oil) => {
    const fuels = [
      ['methane', 0.8952, methane],
      ['propane', 0.9162, propane],
      [OIL, 0.9371, oil],
    ] as const;
    for (const [fuel, k, expected] of fuels) {
      const at = relationsAt(fuel, { inputs: { 'reading.o2_pct': o2At(excessAir, k) } });
      expect(at('excess_air_pct').value).toBeCloseTo(excessAir, 1);
      expect(Math.abs(at('dew_point_C').value - expected)).toBeLessThan(0.15);
    }
  });
});

test('about 59 °C for natural gas without excess air (published)', () => {
  const at = relationsAt('natural_gas', { inputs: { 'reading.o2_pct': 0 } });
  expect(Math.abs(at('dew_point_C').value - 59)).toBeLessThan(0.6);
});

test('No. 2 fuel oil: below methane by its carbon; between the table’s oil and 1.5 K above, as it holds more hydrogen', () => {
  const at = relationsAt('no2_oil', { inputs: { 'reading.o2_pct': 5.08 } });
  expect(at('dew_point_C').value).toBeGreaterThan(44.5);
  expect(at('dew_point_C').value).toBeLessThan(46);
});

test('methane at 9.15 % CO2: 15.5 % water, not the 18.6 % of a circulating sample', () => {
  const at = relationsAt('methane', { inputs: { 'reading.co2_pct': 9.15 } });
  const share = at('flue_water').value / (at('flue_water').value + at('dry_flue').value);
  expect(share).toBeCloseTo(0.155, 2);
});

describe('the saturation line', () => {
  // IAPWS R7-97(2012), tables 35 and 36, its values for program verification (from memory).
  test.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])('%s K: %s MPa', (kelvin, megapascal) => {
    expect(saturationPressurePa(kelvin) / 1e6 / megapascal).toBeCloseTo(1, 8);
  });
  test.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('%s MPa: %s K', (megapascal, kelvin) => {
    expect(saturationTemperatureK(megapascal * 1e6)).toBeCloseTo(kelvin, 5);
  });

  test('3169.9 Pa at 25 °C (IAPWS, from memory)', () => {
    expect(saturationPressurePa(298.15)).toBeCloseTo(3169.9, 0);
  });
  test('agrees with the Wagner equation (IAPWS SR1-86, from memory) to 0.02 % from 0 to 100 °C', () => {
    const wagner = (t: number): number => {
      const tau = 1 - t / 647.096;
      const sum =
        -7.85951783 * tau +
        1.84408259 * tau ** 1.5 -
        11.7866497 * tau ** 3 +
        22.6807411 * tau ** 3.5 -
        15.9618719 * tau ** 4 +
        1.80122502 * tau ** 7.5;
      return 22.064e6 * Math.exp((647.096 / t) * sum);
    };
    for (let t = 273.16; t <= 373.15; t += 5) expect(saturationPressurePa(t) / wagner(t)).toBeCloseTo(1, 3.5);
  });
});
