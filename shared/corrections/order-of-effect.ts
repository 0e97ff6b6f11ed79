import type { Correction } from './correction.ts';

/**
 * Sorts corrections as they take effect: by day, within a day by turn. Equal turns are those of people who did not know
 * of each other; their ids settle it, so that everybody's copy comes to the same.
 */
export function byEffect(a: Correction, b: Correction): number {
  return compareText(a.made_on, b.made_on) || a.turn - b.turn || compareText(a.id, b.id);
}

/** The turn of a correction that is made now: behind all those of its day. */
export function nextTurn(made_on: string, others: Iterable<Pick<Correction, 'made_on' | 'turn'>>): number {
  let last = 0;
  for (const other of others) if (other.made_on === made_on) last = Math.max(last, other.turn);
  return last + 1;
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
