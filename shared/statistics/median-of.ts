import { median } from 'simple-statistics';

/** Median (mean of the two middle values of an even number of them); NaN of nothing. */
export function medianOf(values: readonly number[]): number {
  return values.length === 0 ? Number.NaN : median([...values]);
}
