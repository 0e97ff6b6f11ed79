/**
 * A fixed-speed fan moves a constant volume: (1 + e2) / (1 + e1) = (T1 / T2) (p2 / p1), absolute. A published check of the law:
 * 20 % excess air at 40 °F falls to 11 % at 85 °F (trade press, seen). The other figures are computed from the same law
 * (cross-check), tuned to 15 % at 80 °F and 29 in. Hg.
 */
import { describe, expect, test } from 'vitest';
import { o2FromExcessAir } from '../../shared/combustion/flue-gas.ts';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import { fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { convert } from '../../shared/quantities/convert.ts';
import { relationsAt } from '../shared/combustion/relations-at.ts';

const found = findFuel('natural_gas');
if (found.status !== 'value') throw new Error('natural_gas');
const gas = fuelProperties(found.value);
const celsius = (fahrenheit: number): number => convert(fahrenheit, 'degF', 'Cel');

/** Excess air in percent at reference air of a burner that shows `excessAir` percent in air of this state. */
function atReference(
  excessAir: number,
  airF: number,
  pressureInHg = 29.921,
  exponents: readonly [number, number] = [1, 1],
): number {
  const at = relationsAt('natural_gas', {
    inputs: {
      'reading.o2_pct': o2FromExcessAir(excessAir / 100, gas),
      'burner.air_C': celsius(airF),
      pressure_Pa: convert(pressureInHg, 'inhg', 'Pa'),
      'burner.temperature_exponent': exponents[0],
      'burner.pressure_exponent': exponents[1],
    },
  });
  return 100 * at('reference_excess_air').value;
}

test('20 % at 40 °F and 11 % at 85 °F are one setting (published)', () => {
  expect(Math.abs(atReference(20, 40) - atReference(11, 85))).toBeLessThan(1.0);
});

describe('15 % at 80 °F is the same setting as (cross-check)', () => {
  const setting = atReference(15, 80);
  test.each([
    [0, 35.0],
    [20, 29.4],
    [40, 24.2],
    [60, 19.4],
    [100, 10.9],
    [120, 7.1],
  ])('at %s °F: %s %%', (airF, excessAir) => {
    expect(Math.abs(atReference(excessAir, airF) - setting)).toBeLessThan(0.1);
  });
});

describe('15 % at 29 in. Hg is the same setting as (cross-check)', () => {
  const setting = atReference(15, 80, 29);
  test.each([
    [27, 7.1],
    [28, 11.0],
    [30, 19.0],
    [31, 22.9],
  ])('at %s in. Hg: %s %%', (inHg, excessAir) => {
    expect(Math.abs(atReference(excessAir, 80, inHg) - setting)).toBeLessThan(0.1);
  });
});

describe('by the way the burner is fed', () => {
  test('found 6.0 and left 4.0 % O2 at 10 °F are 3.9 and 1.6 % at reference air behind a fixed fan (computed by the same law)', () => {
    const o2 = (read: number): number =>
      relationsAt('natural_gas', { inputs: { 'reading.o2_pct': read, 'burner.air_C': celsius(10) } })(
        'o2_reference_pct',
      ).value;
    expect(Math.abs(o2(6) - 3.9)).toBeLessThan(0.12);
    expect(Math.abs(o2(4) - 1.6)).toBeLessThan(0.12);
  });
  test('a pneumatic premix moves half as far, and not with the barometer', () => {
    const whole = atReference(20, 20) - 20;
    expect(Math.abs((atReference(20, 20, 29.921, [0.5, 0]) - 20) / whole - 0.5)).toBeLessThan(0.02);
    expect(atReference(20, 20, 28, [0.5, 0])).toBeCloseTo(atReference(20, 20, 31, [0.5, 0]), 10);
  });
  test('trim does not move at all', () => {
    expect(atReference(20, 0, 28, [0, 0])).toBeCloseTo(20, 10);
  });
});

test('an outside-air premix swings by some seven tenths of CO2 between 10 and 90 °F (common practice, no source)', () => {
  const atAir = (airF: number): number => {
    const lambda = 1 + gas.dryRatio * (gas.co2maxPct / 8.6 - 1);
    const there = lambda * Math.sqrt((celsius(70) + 273.15) / (celsius(airF) + 273.15));
    return (gas.co2maxPct * gas.dryRatio) / (gas.dryRatio + there - 1);
  };
  const swing = atAir(90) - atAir(10);
  expect(swing).toBeGreaterThan(0.5);
  expect(swing).toBeLessThan(0.9);
  const back = relationsAt('natural_gas', {
    inputs: {
      'reading.co2_pct': atAir(10),
      'burner.air_C': celsius(10),
      'burner.temperature_exponent': 0.5,
      'burner.pressure_exponent': 0,
    },
  });
  // Reference air is 20 °C, a degree below 70 °F.
  expect(Math.abs(back('co2_reference_pct').value - 8.6)).toBeLessThan(0.02);
});
