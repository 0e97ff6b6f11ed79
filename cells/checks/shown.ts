/** A number as a sentence carries it. */
export function shown(value: number, digits = 1): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(digits))) : 'unknown';
}
