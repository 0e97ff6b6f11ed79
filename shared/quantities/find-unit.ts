import type { Unit } from './unit.ts';
import { UNIT_CODES, UNIT_NAMES } from './unit-table.ts';

/**
 * The unit of a UCUM code or of a name people use ("in. w.c.", "inwc", "°F", "btuh"); undefined where none is known.
 * A code counts as written; names are read without regard to case.
 */
export function findUnit(text: string): Unit | undefined {
  const trimmed = text.trim();
  return UNIT_CODES.get(trimmed) ?? UNIT_NAMES.get(trimmed.toLowerCase().replace(/\s+/g, ' '));
}
