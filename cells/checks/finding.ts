import type { CheckName } from './checks.ts';

/** What one check says about one reading. */
export interface Finding {
  readonly check: CheckName;
  /** Row of the readings table. */
  readonly row: number;
  /** Columns it is about; of an impossible value these are left out of the calculations. */
  readonly columns: readonly string[];
  /** One sentence with the numbers. */
  readonly sentence: string;
}

export type Report = (check: CheckName, row: number, columns: readonly string[], sentence: string) => void;
