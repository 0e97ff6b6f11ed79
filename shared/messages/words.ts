import { groupedDigits } from '../quantities/grouped-digits.ts';

/** Numbers and names as sentences of any room carry them. Unknown numbers are said to be unknown, never printed as such. */

const PASCALS_PER_INCH = 249.08891;

export const number = (value: number, digits: number): string =>
  Number.isFinite(value) ? value.toFixed(digits).replace(/^-(0(\.0*)?)$/, '$1') : 'unknown';

/** Pressures in both the units that the trade reads. */
export const pressure = (pa: number): string =>
  Number.isFinite(pa) ? `${number(pa, 0)} Pa (${number(pa / PASCALS_PER_INCH, 2)} in. w.c.)` : 'unknown';

/** A chance or a share, in whole percent; never 0 or 100 unless it is exactly that. */
export function percent(share: number): string {
  if (!Number.isFinite(share)) return 'unknown';
  if (share > 0 && share < 0.01) return 'under 1 %';
  if (share < 1 && share > 0.99) return 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

export const count = (amount: number, one: string, many: string): string =>
  `${groupedDigits(String(amount))} ${amount === 1 ? one : many}`;

export const listOf = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`;
