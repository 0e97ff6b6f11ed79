/** Every unit of the table against an independent implementation of UCUM (@lhncbc/ucum-lhc). */
import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import { conversion } from '../../shared/quantities/convert.ts';
import type { Unit } from '../../shared/quantities/unit.ts';
import { UNITS } from '../../shared/quantities/unit-table.ts';

const ucum = UcumLhcUtils.getInstance();

/** UCUM's own symbol where it has no unit of ours: money and a therm of gas are conventions of ours. */
const OURS = new Set(['{currency}']);
/** UCUM rounds these otherwise: mercury to 133.322, the month and the year to the Julian year, the psi and the horsepower. */
const TOLERANCE: Readonly<Record<string, number>> = {
  'mm[Hg]': 5e-6,
  "[in_i'Hg]": 5e-6,
  '[psi]': 1e-6,
  '[HP]': 1e-6,
  "[in_i'H2O]": 1e-7,
};

const base = (unit: Unit): Unit =>
  UNITS.find((other) => !other.point && other.dimension.every((e, i) => e === unit.dimension[i])) as Unit;

describe('UCUM agrees with the table', () => {
  test.each(UNITS.filter(({ code }) => !OURS.has(code)).map((unit) => [unit.code, unit] as const))(
    '%s',
    (code, unit) => {
      const to = unit.point ? UNITS.find((other) => other.code === 'K') : base(unit);
      const ours = conversion(unit, to as Unit);
      for (const value of [1, 37.5]) {
        const theirs = ucum.convertUnitTo(code, value, (to as Unit).code);
        expect(theirs.status, JSON.stringify(theirs.msg)).toBe('succeeded');
        const expected = theirs.toVal as number;
        const found = value * (ours?.factor ?? Number.NaN) + (ours?.offset ?? Number.NaN);
        expect(Math.abs(found / expected - 1)).toBeLessThanOrEqual(TOLERANCE[code] ?? 1e-9);
      }
    },
  );
});
