import { shownDoubt, shownNumber } from '../formula/shown-number.ts';
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
  const input = { name, title, symbol, shown: shownNumber(value, unit), ...shownDoubt(value, sd, unit) };
  return { input, value, sd, bound: 0, unit };
}
