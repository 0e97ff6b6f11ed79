/**
 * A number as files carry it: 12 significant digits, shortest form, '' for unknown.
 * `exp`, `log` and `pow` differ in the last bit between JavaScript engines; twelve digits make the bytes equal everywhere.
 */
export function twelveDigits(value: number): string {
  if (!Number.isFinite(value)) return '';
  const rounded = Number(value.toPrecision(12));
  return Object.is(rounded, -0) ? '0' : String(rounded);
}
