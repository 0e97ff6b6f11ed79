import type { WorkingInput } from './working.ts';

/** An input of a working with its number, for the relations that are built on it. */
export interface WorkedNumber {
  readonly input: WorkingInput;
  readonly value: number;
  /** NaN where it is not known, 0 where the number is exact. */
  readonly sd: number;
  /** 1 for "at least", -1 for "at most". */
  readonly bound: number;
  readonly unit: string;
}
