/** A reading that a number comes from: what it is a reading of, and where it stands. */
export interface WorkedReading {
  readonly unit: string;
  /** ISO 8601 date or date-time. */
  readonly takenAt: string;
  readonly fire: string;
  readonly state: string;
  readonly fuel: string;
  /** '' for a reading that no file holds. */
  readonly file: string;
  /** Physical line, the first is 1; NaN where there is none. */
  readonly line: number;
  /** Columns of the readings that the number rests on: 'o2_pct'. */
  readonly fields: readonly string[];
}
