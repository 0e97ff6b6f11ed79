import type { RowKey } from './correction.ts';

/** Unit ids agree when they differ only in case, spaces and dashes, as they do between exports. */
export function plainUnit(unit: string): string {
  return unit.toLowerCase().replaceAll(/[\s_./-]+/g, '');
}

/** The same text for rows that a correction cannot tell apart; `nth` counts among them. */
export function rowKeyText({ unit, taken_at, fire, state, fuel }: Omit<RowKey, 'nth'>): string {
  return JSON.stringify([plainUnit(unit), taken_at, fire, state, fuel]);
}
