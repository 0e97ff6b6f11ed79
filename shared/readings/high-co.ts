import { OVER_RANGE_BOUND, type ReadingColumns } from './reading-columns.ts';

/** CO as measured from which a set-aside row is named first, ppm: the usual line for shutting down (common practice). */
export const HIGH_CO_PPM = 400;

/** The CO of a row where it is high, as text; "over range" where it is that without a number; else ''. */
export function highCoOf(columns: ReadingColumns, row: number): string {
  for (const name of ['co_ppm', 'co_air_free_ppm']) {
    const column = columns.numbers.get(name)!;
    const value = column.get(row);
    if (column.boundAt(row) === OVER_RANGE_BOUND) return 'over range';
    if (value >= HIGH_CO_PPM) return `${column.boundAt(row) > 0 ? '>' : ''}${value}`;
  }
  return '';
}
