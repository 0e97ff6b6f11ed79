import { count } from './words.ts';

/** "7 of 26 units raised: 1 safety, 3 tolerance, 2 supply, 1 data." Tiers without a unit are left out. */
export function raisedAnswer(
  raised: number,
  units: number,
  tiers: readonly string[],
  counts: readonly number[],
): string {
  if (raised === 0) return `None of ${count(units, 'unit', 'units')} raised.`;
  const parts = tiers.map((tier, i) => (counts[i] > 0 ? `${counts[i]} ${tier}` : '')).filter((part) => part !== '');
  return `${raised} of ${count(units, 'unit', 'units')} raised: ${parts.join(', ')}.`;
}
