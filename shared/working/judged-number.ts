import type { WorkedNumber } from './worked-number.ts';

/** A number held against its limit, as a difference that is positive where its title is true. */
export interface JudgedNumber {
  readonly title: string;
  readonly symbol: string;
  readonly from: WorkedNumber;
  readonly less: WorkedNumber;
}
