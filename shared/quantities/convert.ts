import { findUnit } from './find-unit.ts';
import type { Unit } from './unit.ts';

/** A value in one unit times `factor` plus `offset` is the value in the other. */
export interface Conversion {
  readonly factor: number;
  readonly offset: number;
}

/**
 * How values of one unit become values of another; undefined where the two measure different things.
 * Points (temperatures in °C, °F, K) keep their zero: 0 °C is 32 °F. Use `differenceConversion` for differences.
 */
export function conversion(from: Unit, to: Unit): Conversion | undefined {
  if (from.dimension.some((exponent, i) => exponent !== to.dimension[i])) return undefined;
  return { factor: from.factor / to.factor, offset: (from.offset - to.offset) / to.factor };
}

/** As `conversion`, for differences: 1 K is 1.8 °F. */
export function differenceConversion(from: Unit, to: Unit): Conversion | undefined {
  const whole = conversion(from, to);
  return whole && { factor: whole.factor, offset: 0 };
}

/**
 * A value in another unit, both named by UCUM code or common name ('inwc', 'Pa', 'degF' ...).
 * @throws RangeError for a unit nobody knows or two that measure different things: a programming error, since whoever
 * reads a unit from a file asks `findUnit` and `conversion` first.
 */
export function convert(value: number, from: string, to: string): number {
  const [source, target] = [findUnit(from), findUnit(to)];
  const how = source && target && conversion(source, target);
  if (!how) throw new RangeError(`no conversion from ${from} to ${to}`);
  return value * how.factor + how.offset;
}
