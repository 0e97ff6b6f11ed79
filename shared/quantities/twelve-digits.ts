/** Between these, twelve digits are written without an exponent, and a whole number needs no rounding. */
const SMALLEST_PLAIN = 1e-6;
const LARGEST_PLAIN = 1e12;
const ZERO = '0'.charCodeAt(0);
const POINT = '.'.charCodeAt(0);

/**
 * A number as files carry it: 12 significant digits, shortest form, '' for unknown.
 * `exp`, `log` and `pow` differ in the last bit between JavaScript engines; twelve digits make the bytes equal everywhere.
 */
export function twelveDigits(value: number): string {
  if (!Number.isFinite(value)) return '';
  const size = Math.abs(value);
  if (size < LARGEST_PLAIN && Number.isInteger(value)) return value === 0 ? '0' : String(value);
  if (size >= SMALLEST_PLAIN && size < LARGEST_PLAIN) {
    const text = value.toPrecision(12);
    if (!text.includes('e')) return withoutZeros(text);
  }
  return String(Number(value.toPrecision(12)));
}

/** Twelve digits with a point in them, less the zeros at the end. Half the time of reading the text back as a number. */
function withoutZeros(text: string): string {
  if (!text.includes('.')) return text;
  let end = text.length;
  while (text.charCodeAt(end - 1) === ZERO) end--;
  return text.slice(0, text.charCodeAt(end - 1) === POINT ? end - 1 : end);
}
