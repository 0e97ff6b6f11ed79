import type { CorrectionDone } from '../../shared/corrections/correction.ts';
import type { CheckName } from './checks.ts';

/** What would put a reading right, as corrections that the user accepts or not. */
export interface Repair {
  /** One clause: 'swap high and low fire'. */
  readonly words: string;
  readonly corrections: readonly CorrectionDone[];
}

/** What a rule says about one row. Thunks are called for the rows that are shown one by one. */
export interface Said {
  readonly check: CheckName;
  /** Row of the readings table. */
  readonly row: number;
  /** Columns it is about; of an impossible value these are left out of the calculations. */
  readonly columns: readonly string[];
  readonly sentence: () => string;
  /** What is said of many such rows of one file and analyzer, in a clause; the check's title where left out. */
  readonly gist?: string;
  readonly repair?: () => Repair;
}

export type Report = (said: Said) => void;

/** What one check says about the readings that it touches: one, or many that it says the same about. */
export interface Finding {
  readonly check: CheckName;
  /** Rows of the readings table, ascending. */
  readonly rows: readonly number[];
  readonly columns: readonly string[];
  /** One sentence with the numbers. */
  readonly sentence: string;
  readonly repair: Repair | undefined;
}
