import { readIsoDate } from '../../shared/quantities/dates.ts';
import type { SmallRow } from '../../shared/readings/read-table.ts';

/** A gap of the register that somebody filled: what the file leaves empty for a unit. */
export interface Filled {
  readonly unit: string;
  /** Field of the register, such as burner or o2_high_target_pct; numbers in its kept unit. */
  readonly field: string;
  readonly value: string;
}

/** The row with what was filled in, where the file has nothing; what the file says is never overruled. */
export function filledRow(row: SmallRow, filled: readonly Filled[]): SmallRow {
  const unit = row.text('unit');
  const own = new Map(filled.filter((one) => one.unit === unit).map(({ field, value }) => [field, value]));
  if (own.size === 0) return row;
  return {
    ...row,
    text: (field) => row.text(field) || (own.get(field) ?? ''),
    number: (field) => known(row.number(field), Number(own.get(field) ?? Number.NaN)),
    date: (field) => known(row.date(field), readIsoDate(own.get(field) ?? '')),
  };
}

const known = (value: number, otherwise: number): number => (Number.isNaN(value) ? otherwise : value);
