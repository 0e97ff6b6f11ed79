/** Unknown is never good: whatever misses a number to judge by is unknown, not within. */
export type Verdict = 'within' | 'outside' | 'unknown';

/**
 * A value against its limits, the limits themselves being within. A limit that is NaN is no limit on that side; with
 * neither, or without the value, the verdict is unknown.
 */
export function verdictOf(value: number, lower: number, upper: number): Verdict {
  if (Number.isNaN(value) || (Number.isNaN(lower) && Number.isNaN(upper))) return 'unknown';
  return value < lower || value > upper ? 'outside' : 'within';
}
