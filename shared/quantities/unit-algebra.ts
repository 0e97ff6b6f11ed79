import { power } from './elementary.ts';
import type { Dimension, Unit } from './unit.ts';
import { UNITS } from './unit-table.ts';

const pure = (code: string): Unit => UNITS.find((unit) => unit.code === code) as Unit;
export const ONE: Unit = pure('1');

export const isPure = ({ dimension }: Unit): boolean => dimension.every((exponent) => exponent === 0);

export const sameDimension = (a: Unit, b: Unit): boolean =>
  a.dimension.every((exponent, i) => exponent === b.dimension[i]);

/** The unit of differences on a scale: kelvin for °C, a degree Fahrenheit for °F. */
export function differenceUnit(unit: Unit): Unit {
  if (!unit.point) return unit;
  if (unit.factor === 1) return pure('K');
  return { ...unit, offset: 0, point: false };
}

/** A product or quotient under the name people know where it has one, else under its UCUM expression. */
function derive(code: string, shown: string, dimension: Dimension, factor: number): Unit {
  const derived: Unit = { code, shown, dimension, factor, offset: 0, point: false };
  const known = UNITS.find(
    (unit) => !unit.point && sameDimension(unit, derived) && Math.abs(unit.factor / factor - 1) < 1e-12,
  );
  return known ?? derived;
}

export function multiplyUnits(a: Unit, b: Unit): Unit {
  if (a.code === '1') return b;
  if (b.code === '1') return a;
  const dimension = a.dimension.map((exponent, i) => exponent + b.dimension[i]) as unknown as Dimension;
  return derive(`${a.code}.${b.code}`, `${a.shown}·${b.shown}`, dimension, a.factor * b.factor);
}

export function divideUnits(a: Unit, b: Unit): Unit {
  if (b.code === '1') return a;
  const dimension = a.dimension.map((exponent, i) => exponent - b.dimension[i]) as unknown as Dimension;
  const [over, shownOver] = a.code === '1' ? ['', '1'] : [a.code, a.shown];
  const under = /[./]/.test(b.code) ? `(${b.code})` : b.code;
  return derive(`${over}/${under}`, `${shownOver}/${b.shown}`, dimension, a.factor / b.factor);
}

export function raiseUnit(unit: Unit, exponent: number): Unit {
  if (unit.code === '1') return unit;
  const dimension = unit.dimension.map((power) => power * exponent) as unknown as Dimension;
  return derive(`(${unit.code})${exponent}`, `(${unit.shown})^${exponent}`, dimension, power(unit.factor, exponent));
}
