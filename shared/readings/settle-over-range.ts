import { twelveDigits } from '../quantities/twelve-digits.ts';
import type { GrowingNumbers } from './growing-columns.ts';
import { OVER_RANGE_BOUND, type ReadingColumns, ROW } from './reading-columns.ts';

/** A column in which cells said "over range" without a number. */
export interface OverRange {
  readonly field: string;
  readonly cells: number;
  /** The least of the numbers that were put there, as written; '' where none is known and the cells stay unknown. */
  readonly least: string;
}

/**
 * Least range of a CO sensor in a hand-held analyzer, ppm: "over range" is at least this where nothing higher was shown.
 * Common practice, no source.
 */
const CO_RANGE_PPM = 2000;

/**
 * "Over range" is a bound: at least the highest value that the same analyzer showed in that column, and for CO at least
 * 2000 ppm. Where nothing is known it stays unknown.
 */
export function settleOverRange(columns: ReadingColumns): OverRange[] {
  const found: OverRange[] = [];
  for (const [field, column] of columns.numbers) {
    if (!column.bounds?.includes(OVER_RANGE_BOUND)) continue;
    const highest = highestShown(columns, column);
    const floor = /^co_(?!ambient)/.test(field) ? CO_RANGE_PPM : Number.NaN;
    let cells = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < columns.rows; row++) {
      if (column.boundAt(row) !== OVER_RANGE_BOUND) continue;
      const shown = highest.get(columns.texts.get('analyzer')?.code(row) ?? -1) ?? Number.NaN;
      const value = Number.isNaN(shown) || shown < floor ? floor : shown;
      column.values[row] = value;
      column.setBound(row, Number.isNaN(value) ? 0 : 1);
      if (columns.status[row] !== ROW.accepted) continue;
      cells++;
      if (value < least) least = value;
    }
    if (cells > 0) found.push({ field, cells, least: Number.isFinite(least) ? twelveDigits(least) : '' });
  }
  return found;
}

function highestShown(columns: ReadingColumns, column: GrowingNumbers): ReadonlyMap<number, number> {
  const analyzer = columns.texts.get('analyzer');
  const highest = new Map<number, number>();
  for (let row = 0; row < columns.rows; row++) {
    const value = column.get(row);
    if (Number.isNaN(value) || column.boundAt(row) === OVER_RANGE_BOUND || columns.status[row] !== ROW.accepted)
      continue;
    const code = analyzer?.code(row) ?? -1;
    if (!(value <= (highest.get(code) ?? Number.NEGATIVE_INFINITY))) highest.set(code, value);
  }
  return highest;
}
