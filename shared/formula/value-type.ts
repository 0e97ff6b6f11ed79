import type { Unit } from '../quantities/unit.ts';

/** What a part of a formula yields. Logic is held as 1, 0 or NaN (unknown); a date as days since 1970-01-01. */
export type ValueType =
  | {
      readonly kind: 'number';
      readonly unit: Unit;
      /** A number written without a unit: it takes the unit of what it is added to or compared with. */
      readonly bare: boolean;
    }
  | { readonly kind: 'date' }
  | { readonly kind: 'logic' }
  | { readonly kind: 'text' };

export const numberIn = (unit: Unit): ValueType => ({ kind: 'number', unit, bare: false });

/** As a sentence names it. */
export function describeType(type: ValueType): string {
  if (type.kind === 'number') return 'a number';
  return { date: 'a date', logic: 'a condition', text: 'text' }[type.kind];
}

export const shownUnit = (unit: Unit): string => unit.shown || 'plain numbers';
