import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  airDensityRatio,
  co2FromExcessAir,
  co2FromO2,
  excessAirFromCo2,
  excessAirFromO2,
  impliedCo2maxPct,
  o2FromCo2,
  o2FromExcessAir,
} from '../../../shared/combustion/flue-gas.ts';
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
      const co2 = co2FromExcessAir(excess, properties);
      expect(co2).toBeCloseTo(co2FromO2(o2, properties), 10);
      if (co2 === 0) continue;
      expect(excessAirFromCo2(co2, properties)).toBeCloseTo(excess, 8);
      expect(o2FromCo2(co2, properties)).toBeCloseTo(o2, 10);
      expect(impliedCo2maxPct(o2, co2)).toBeCloseTo(properties.co2maxPct, 10);
    }
  });
});

test('where there is no answer there is NaN, never an infinity', () => {
  const gas = fuelProperties(FUELS[0]);
  const all = [excessAirFromO2, excessAirFromCo2, o2FromExcessAir, co2FromExcessAir, co2FromO2, o2FromCo2];
  fc.assert(
    fc.property(fc.double({ min: -100, max: 200 }), (value) => {
      for (const each of all) expect(Math.abs(each(value, gas))).not.toBe(Number.POSITIVE_INFINITY);
    }),
    { seed: 2 },
  );
  for (const beyond of [20.95, 21, Number.NaN]) expect(excessAirFromO2(beyond, gas)).toBeNaN();
  expect(excessAirFromCo2(0, gas)).toBeNaN();
  expect(excessAirFromCo2(12.5, gas)).toBeNaN();
});

test('air density: 1 at reference air, a tenth more at -6.5 °C; the standard atmosphere at 1000 m is 89.87 kPa (ISO 2533, from memory)', () => {
  expect(airDensityRatio(20, 101_325, 101_325)).toBe(1);
  expect(airDensityRatio(-6.65, 101_325, 101_325)).toBeCloseTo(1.1, 3);
  expect(standardPressurePa(0)).toBe(101_325);
  expect(standardPressurePa(1000) / 1000).toBeCloseTo(89.87, 1);
});
