import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { co2FromO2, excessAirFromO2, impliedCo2maxPct, o2FromExcessAir } from '../../../shared/combustion/flue-gas.ts';
import { FUELS } from '../../../shared/fuels/fuel-list.ts';
import { fuelProperties } from '../../../shared/fuels/fuel-properties.ts';
import { standardPressurePa } from '../../../shared/quantities/standard-pressure.ts';
import { relationsAt } from './relations-at.ts';

describe('one number at a time and column by column are one stoichiometry', () => {
  test.each(FUELS.map((fuel) => [fuel.name, fuel] as const))('%s', (name, fuel) => {
    const properties = fuelProperties(fuel);
    for (const o2 of [0, 2.3, 5, 9.9, 15, 20]) {
      const at = relationsAt(name, { inputs: { 'reading.o2_pct': o2 } });
      expect(at('excess_air').value).toBeCloseTo(excessAirFromO2(o2, properties), 12);
      expect(at('co2_pct').value).toBeCloseTo(co2FromO2(o2, properties), 12);
      const excess = excessAirFromO2(o2, properties);
      expect(o2FromExcessAir(excess, properties)).toBeCloseTo(o2, 10);
      expect(impliedCo2maxPct(o2, co2FromO2(o2, properties))).toBeCloseTo(properties.co2maxPct, 10);
    }
  });
});

test('where there is no answer there is NaN, never an infinity', () => {
  const gas = fuelProperties(FUELS[0]);
  const all = [excessAirFromO2, o2FromExcessAir, co2FromO2];
  fc.assert(
    fc.property(fc.double({ min: -100, max: 200 }), (value) => {
      for (const each of all) expect(Math.abs(each(value, gas))).not.toBe(Number.POSITIVE_INFINITY);
    }),
    { seed: 2 },
  );
  for (const beyond of [20.95, 21, Number.NaN]) expect(excessAirFromO2(beyond, gas)).toBeNaN();
});

test('the standard atmosphere at 1000 m is 89.87 kPa (ISO 2533, from memory)', () => {
  expect(standardPressurePa(0)).toBe(101_325);
  expect(standardPressurePa(1000) / 1000).toBeCloseTo(89.87, 1);
});
