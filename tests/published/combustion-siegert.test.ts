/**
 * Siegert's formula for the flue loss in percent of NET heat, qA = (tA - tL) (A2 / (21 - O2) + B), with the constants of the
 * German 1. BImSchV: heating oil EL A2 0.68, B 0.007; natural gas A2 0.66, B 0.009 (form of the formula seen at etapart.com;
 * constants from memory). It is an engineering fit; thermochemistry agrees with it within 0.2 points for 120 to 250 °C
 * and 1 to 9 % O2, which is the tolerance. O2 in air is 21 % in the formula and 20.95 % in our relation, as each says.
 */
import { describe, expect, test } from 'vitest';
import { relationsAt } from '../shared/combustion/relations-at.ts';

const SIEGERT = [
  ['natural_gas', 0.66, 0.009],
  ['no2_oil', 0.68, 0.007],
] as const;

describe.each(SIEGERT)('%s', (fuel, a2, b) => {
  for (const o2 of [1, 3, 5, 7, 9])
    for (const flue of [120, 160, 200, 250])
      test(`${o2} % O2, ${flue} °C`, () => {
        const at = relationsAt(fuel, { inputs: { 'reading.o2_pct': o2, 'reading.flue_C': flue, 'burner.air_C': 20 } });
        const siegert = (flue - 20) * (a2 / (21 - o2) + b);
        expect(Math.abs(100 - at('efficiency_net_pct').value - siegert)).toBeLessThan(0.2);
      });
});

test('the formula with A1 over CO2 gives the same: A2/A1 is 21/CO2max (0.66/0.37, 0.68/0.50; from memory)', () => {
  expect((0.37 * 21) / 0.66).toBeCloseTo(11.8, 1);
  expect((0.5 * 21) / 0.68).toBeCloseTo(15.4, 1);
  const at = relationsAt('natural_gas', {
    inputs: { 'reading.co2_pct': 10, 'reading.flue_C': 180, 'burner.air_C': 20 },
  });
  expect(Math.abs(100 - at('efficiency_net_pct').value - 160 * (0.37 / 10 + 0.009))).toBeLessThan(0.2);
});

test('liquefied gas, A2 0.63 and B 0.008 (from memory): 5 % below what the flue gas of propane carries; we follow thermochemistry', () => {
  // Per net heat propane makes as much dry flue gas as natural gas (10.70 and 10.65 mol/MJ by stoichiometry), whose A2 is 0.66;
  // the rule lumps it with its mixtures with air.
  for (const [o2, flue] of [
    [3, 160],
    [5, 200],
    [7, 200],
  ] as const) {
    const at = relationsAt('propane', { inputs: { 'reading.o2_pct': o2, 'reading.flue_C': flue, 'burner.air_C': 20 } });
    const gap = 100 - at('efficiency_net_pct').value - (flue - 20) * (0.63 / (21 - o2) + 0.008);
    expect(gap).toBeGreaterThan(0);
    expect(gap).toBeLessThan(0.5);
  }
});
