import { conflict } from '../../../shared/messages/merge.ts';
import type { Conflict } from './conflict.ts';

/** A conflict in one line: where, and what both hold. */
export function conflictLine({ place, values: [one, other] }: Conflict): string {
  return conflict(place, JSON.stringify(one) ?? '', JSON.stringify(other) ?? '');
}
