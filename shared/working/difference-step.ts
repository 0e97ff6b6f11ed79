import { shownDoubt, shownNumber } from '../formula/shown-number.ts';
import type { WorkedNumber } from './worked-number.ts';
import type { WorkingStep } from './working.ts';

/** What a difference is called. */
export interface DifferenceNames {
  readonly name: string;
  readonly title: string;
  readonly symbol: string;
  /** Key of a bibliography entry. */
  readonly source: string;
  readonly validity: string;
}

/** One number less another one that it does not share an input with. */
export function differenceStep(
  { name, title, symbol, source, validity }: DifferenceNames,
  from: WorkedNumber,
  less: WorkedNumber,
): WorkingStep {
  const value = from.value - less.value;
  const sd = Math.sqrt(from.sd ** 2 + less.sd ** 2);
  // A difference of two percentages is no percentage of either.
  const unit = from.unit === '%' ? 'points' : from.unit;
  const written = (text: (of: WorkedNumber) => string): string => `${symbol} = ${text(from)} − ${text(less)}`;
  return {
    name,
    title,
    symbols: written(({ input }) => input.symbol),
    numbers: written(({ input }) => input.shown),
    result: shownNumber(value, unit, from.bound),
    stated: shownDoubt(value, sd, unit, from.bound).stated,
    value,
    sd,
    unit,
    source,
    validity,
  };
}
