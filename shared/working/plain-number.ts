import { shownNumber, shownSpread } from '../formula/shown-number.ts';
import type { WorkedNumber } from './worked-number.ts';

/** A number that no relation gave: a limit, a fitted level, a reading. A standard uncertainty of 0 says that it is exact. */
export function plainNumber(
  name: string,
  title: string,
  symbol: string,
  value: number,
  unit: string,
  sd = 0,
): WorkedNumber {
  const shownSd = sd > 0 ? shownSpread(sd, unit) : '';
  return { input: { name, title, symbol, shown: shownNumber(value, unit), shownSd }, value, sd, bound: 0, unit };
}
