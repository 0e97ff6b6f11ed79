/** Median of the known values; NaN where there are none. */
export function median(values: readonly number[]): number {
  const known = values.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  const middle = known.length >> 1;
  if (known.length === 0) return Number.NaN;
  return known.length % 2 === 1 ? known[middle] : (known[middle - 1] + known[middle]) / 2;
}
