import { describe, expect, test } from 'vitest';
import { fuelProperties } from '../../../shared/fuels/fuel-properties.ts';
import { readFuel } from '../../../shared/fuels/read-fuel.ts';

describe('a fuel of one’s own', () => {
  test('a gas by mole percent, scaled to 100', () => {
    const found = readFuel({ name: 'town_gas', mole_pct: { methane: 94, nitrogen: 5 } });
    expect(found).toMatchObject({ status: 'value', value: { name: 'town_gas', title: 'town gas' } });
    if (found.status !== 'value' || found.value.composition.kind !== 'gas') throw new Error('gas');
    expect(found.value.composition.moles.methane).toBeCloseTo(94 / 99, 12);
  });

  test('pure methane by mole percent is methane', () => {
    const found = readFuel({ name: 'just_methane', mole_pct: { methane: 100 } });
    if (found.status !== 'value') throw new Error('methane');
    expect(fuelProperties(found.value).co2maxPct).toBeCloseTo(11.7, 2);
  });

  test('an oil by ultimate analysis: the classic row of carbon needs 4.76 volumes of 21 % air and 11.5 kg a kilogram', () => {
    const found = readFuel({ name: 'coke', mass_pct: { C: 100 }, gross_MJ_per_kg: 32.8 });
    if (found.status !== 'value') throw new Error('carbon');
    const { air, carbonDioxide, co2maxPct, gross } = fuelProperties(found.value);
    expect(air / carbonDioxide).toBeCloseTo(1 / 0.2095, 6);
    expect(co2maxPct).toBeCloseTo(20.95, 6);
    const kgAirPerKg = (air * (gross / 1e6) * 28.965) / 1000;
    expect(Math.abs(kgAirPerKg - 11.53)).toBeLessThan(0.06);
  });

  test.each([
    [null, 'A fuel of your own is null'],
    [{ name: 'Bad Name', mole_pct: {} }, 'called "Bad Name"'],
    [{ name: 'a', mole_pct: { methan: 100 } }, 'did you mean methane?'],
    [{ name: 'a', mole_pct: { methane: 60 } }, 'come to 60 %'],
    [{ name: 'a', mole_pct: { methane: -5, ethane: 105 } }, 'from 0 to 100'],
    [{ name: 'a', mole_pct: { nitrogen: 100 } }, 'nothing that burns'],
    [{ name: 'a', mass_pct: { C: 87, H: 13 } }, 'gross_MJ_per_kg'],
    [{ name: 'a', mass_pct: { C: 87, H: 13 }, gross_MJ_per_kg: 45_000 }, 'between 5 and 150'],
    [{ name: 'a', mass_pct: { ash: 100 }, gross_MJ_per_kg: 10 }, 'nothing that burns'],
    [{ name: 'a' }, 'has no composition'],
    [{ name: 'a', mole_pct: { __proto__: 1, constructor: 100 } }, 'not known'],
  ])('%j is refused in one sentence: %s', (raw, part) => {
    const found = readFuel(raw);
    expect(found).toMatchObject({ status: 'error', message: expect.stringContaining(part) });
    expect(found.status === 'error' && found.message).not.toContain('\n');
  });
});
