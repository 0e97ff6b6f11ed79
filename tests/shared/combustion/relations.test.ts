import { describe, expect, test } from 'vitest';
import { ANALYZER_CLASSES, MEASURED } from '../../../shared/combustion/analyzer-classes.ts';
import { burnerBehavior, DENSITY_EXPONENTS } from '../../../shared/combustion/density-exponents.ts';
import { relationsAt } from './relations-at.ts';

describe('excess air from O2 and CO2 together', () => {
  const both = (co2: number, co2From: string) =>
    relationsAt('natural_gas', {
      inputs: { 'reading.o2_pct': 5, 'reading.co2_pct': co2 },
      uncertainties: { 'reading.o2_pct': 0.17, 'reading.co2_pct': 0.2 },
      co2From,
    });
  test('a CO2 with a sensor of its own pulls the result and narrows it', () => {
    const alone = both(8.6, 'calculated');
    const together = both(8.6, 'measured');
    expect(together('excess_air_pct').value).toBeGreaterThan(alone('excess_air_pct').value);
    expect(together('excess_air_pct').value).toBeLessThan(100 * together('excess_air_from_co2').value);
    expect(together('excess_air_pct').sd).toBeLessThan(alone('excess_air_pct').sd);
    expect(together('co2_misfit_pct').value).toBeCloseTo(8.6 - 9.03, 2);
  });
  test('a calculated CO2, or one of which nothing is known, counts for nothing', () => {
    for (const from of ['calculated', ''])
      expect(both(8.6, from)('excess_air').value).toBe(both(8.6, from)('excess_air_from_o2').value);
  });
});

describe('humidity of the combustion air', () => {
  const at = (relativeHumidity: number) =>
    relationsAt('natural_gas', {
      inputs: { 'reading.o2_pct': 5, 'reading.flue_C': 45, 'burner.air_C': 25 },
      relativeHumidity,
    });
  test('raises the dew point and, while condensing, what is won back', () => {
    expect(at(0.6)('dew_point_C').value).toBeGreaterThan(at(0)('dew_point_C').value + 1);
    expect(at(0.6)('efficiency_gross_pct').value).toBeGreaterThan(at(0)('efficiency_gross_pct').value);
  });
  test('air at 25 °C and 60 % holds 1.9 % of water by volume (psychrometric charts: 0.0119 kg/kg; common practice)', () => {
    const moles = at(0.6)('air_humidity').value;
    expect((moles * 18.015) / 28.965).toBeCloseTo(0.0119, 4);
  });
});

describe('condensing operation', () => {
  const efficiency = (flue: number, o2 = 5): number =>
    relationsAt('natural_gas', { inputs: { 'reading.o2_pct': o2, 'reading.flue_C': flue, 'burner.air_C': 21 } })(
      'efficiency_gross_pct',
    ).value;
  test.each([
    // Computed independently for natural gas at 5 % O2, air 70 °F.
    [30, 97.2],
    [40, 94.8],
    [45, 93.1],
    [50, 91.0],
    [55, 88.7],
    [60, 88.4],
  ])('flue at %s °C: %s %% gross (cross-check)', (flue, expected) => {
    expect(Math.abs(efficiency(flue) - expected)).toBeLessThan(0.2);
  });
  test('runs through the dew point without a jump', () => {
    for (let flue = 50; flue < 58; flue += 0.1)
      expect(Math.abs(efficiency(flue + 0.1) - efficiency(flue))).toBeLessThan(0.06);
  });
  test('net may exceed 100 %, gross never', () => {
    const at = relationsAt('natural_gas', {
      inputs: { 'reading.o2_pct': 4, 'reading.flue_C': 30, 'burner.air_C': 21 },
    });
    expect(at('efficiency_net_pct').value).toBeGreaterThan(100);
    expect(at('efficiency_gross_pct').value).toBeLessThan(100);
  });
  test('the latent loss avoided is about 11 % of net for gas and 6 % for oil (handbooks on condensing, seen)', () => {
    const latent = (fuel: string): number =>
      relationsAt(fuel, { inputs: { 'reading.o2_pct': 0 } })('flue_water').value * 44_013 * 1e-6;
    expect(100 * latent('natural_gas') * 1.108).toBeGreaterThan(10.5);
    expect(100 * latent('natural_gas') * 1.108).toBeLessThan(11.5);
    expect(Math.abs(100 * latent('no2_oil') * 1.068 - 6.5)).toBeLessThan(0.6);
  });
});

describe('sensitivities that the trade knows (computed independently, natural gas)', () => {
  test('40 °F of stack is about one point of efficiency', () => {
    const at = (flueF: number): number =>
      relationsAt('natural_gas', {
        inputs: { 'reading.o2_pct': 5, 'reading.flue_C': (flueF - 32) / 1.8, 'burner.air_C': 21 },
      })('efficiency_gross_pct').value;
    expect(Math.abs(at(340) - at(380) - 1)).toBeLessThan(0.1);
  });
  test.each([
    [2, [86.3, 84.1, 81.8]],
    [6, [85.5, 82.8, 80.1]],
    [10, [84.0, 80.5, 77.0]],
  ])('%s %% O2 at 250, 350 and 450 °F: %j %% gross', (o2, expected) => {
    [250, 350, 450].forEach((flueF, i) => {
      const at = relationsAt('natural_gas', {
        inputs: { 'reading.o2_pct': o2, 'reading.flue_C': (flueF - 32) / 1.8, 'burner.air_C': (70 - 32) / 1.8 },
      });
      expect(Math.abs(at('efficiency_gross_pct').value - expected[i])).toBeLessThan(0.25);
    });
  });
});

describe('how a burner follows the air', () => {
  test.each([
    ['power', 'linkage', 'no', 'fixed_volume'],
    ['power', 'fixed', '', 'fixed_volume'],
    ['power', 'pneumatic', '', 'pneumatic'],
    ['premix', '', '', 'pneumatic'],
    ['premix', 'pneumatic', 'no', 'pneumatic'],
    ['premix', 'parallel', '', 'fixed_volume'],
    ['atmospheric', '', '', 'atmospheric'],
    ['power', 'parallel', 'yes', 'trim'],
    ['', '', '', 'unknown'],
    ['', 'pneumatic', '', 'pneumatic'],
  ])('%s, %s, trim %s: %s', (burner, control, trim, behavior) => {
    expect(burnerBehavior(burner, control, trim)).toBe(behavior);
  });
  test('every behavior has its exponents, every class its uncertainties', () => {
    expect(DENSITY_EXPONENTS.fixed_volume).toMatchObject({ temperature: 1, pressure: 1 });
    expect(DENSITY_EXPONENTS.pneumatic).toMatchObject({ temperature: 0.5, pressure: 0 });
    for (const spreads of Object.values(ANALYZER_CLASSES))
      expect(Object.keys(spreads).sort()).toEqual([...MEASURED].sort());
  });
});
