const NARROW_SPACE = '\u202f';

/** Digits of a whole number in groups of three from 10 000 on, a narrow space between (ISO 80000-1, 7.3.1). */
export function groupedDigits(digits: string): string {
  return digits.length > 4 ? digits.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE) : digits;
}
