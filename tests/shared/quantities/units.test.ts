import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conversion, convert, differenceConversion } from '../../../shared/quantities/convert.ts';
import { findUnit } from '../../../shared/quantities/find-unit.ts';
import type { Unit } from '../../../shared/quantities/unit.ts';
import { divideUnits, multiplyUnits } from '../../../shared/quantities/unit-algebra.ts';
import { UNITS } from '../../../shared/quantities/unit-table.ts';

const unit = (name: string): Unit => findUnit(name) as Unit;

describe('a unit is found', () => {
  test.each([
    ['in. w.c.', "[in_i'H2O]"],
    ['inwc', "[in_i'H2O]"],
    ['InH2O', "[in_i'H2O]"],
    ['"WC', "[in_i'H2O]"],
    ['°F', '[degF]'],
    ['degC', 'Cel'],
    ['btuh', '[Btu_IT]/h'],
    ['MMBtu', '10*6.[Btu_IT]'],
    ['therms', '10*5.[Btu_IT]'],
    ['kWh', 'kW.h'],
    ['pct', '%'],
    ['ppmv', '[ppm]'],
    ['', '1'],
  ])('%s: %s', (name, code) => {
    expect(findUnit(name)?.code).toBe(code);
  });
  test.each(['furlong', 'kg/', '/', 'm..s', 'Cel/h', 'm3.', 'constructor', '__proto__', 'in in'])(
    '%s: none',
    (name) => {
      expect(findUnit(name)).toBeUndefined();
    },
  );
  test('every code and name of the table finds its unit, and codes are unique', () => {
    expect(new Set(UNITS.map(({ code }) => code)).size).toBe(UNITS.length);
    for (const each of UNITS) expect(findUnit(each.code)).toBe(each);
  });
});

describe('products and quotients', () => {
  test.each([
    ['mg/m3', 1e-6],
    ['/kW.h', 1 / 3.6e6],
    ['mol/MJ', 1e-6],
    ['m3/h', 1 / 3600],
    ['lb/MMBtu', 0.45359237 / 1.05505585262e9],
  ])('%s is %s in base units', (name, factor) => {
    expect((unit(name)?.factor ?? 0) / factor).toBeCloseTo(1, 12);
  });
  test('a product that people have a name for is called so', () => {
    expect(multiplyUnits(unit('kW'), unit('h')).code).toBe('kW.h');
    expect(divideUnits(unit('kWh'), unit('h')).code).toBe('kW');
    expect(divideUnits(unit('%'), unit('%')).code).toBe('1');
  });
});

describe('conversion', () => {
  test('there and back again is where one was, for every two units of a kind', () => {
    const pairs = UNITS.flatMap((a) => UNITS.filter((b) => conversion(a, b)).map((b) => [a, b] as const));
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.double({ min: -500, max: 5000, noNaN: true }), ([a, b], value) => {
        const back = convert(convert(value, a.code, b.code), b.code, a.code);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-9 * (300 + Math.abs(value)));
      }),
      { seed: 3 },
    );
  });
  test('a difference of temperatures has no zero of its own', () => {
    expect(differenceConversion(unit('°F'), unit('K'))).toMatchObject({ offset: 0 });
    expect(differenceConversion(unit('°F'), unit('K'))?.factor).toBeCloseTo(1 / 1.8, 12);
    expect(conversion(unit('°F'), unit('Pa'))).toBeUndefined();
  });
  test('unknown stays unknown', () => {
    expect(convert(Number.NaN, 'inwc', 'Pa')).toBeNaN();
  });
});
