import * as say from '../messages/import.ts';
import { textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { CellFault } from './read-table.ts';
import { UnitMatcher } from './unit-matcher.ts';

/** Spells unit ids as the register does, where it knows them; tells once of each that was spelled otherwise. */
export function registeredUnits(
  units: Table | undefined,
  faults: CellFault[],
): (found: string, at: { file: string; line: number }) => string {
  if (!units) return (found) => found;
  const matcher = new UnitMatcher(textsOf(units, 'unit').levels);
  const told = new Set<string>();
  return (found, { file, line }) => {
    const { unit, how } = matcher.match(found);
    if (how === 'normalized' && !told.has(found)) {
      told.add(found);
      faults.push({ file, line, reason: say.unitSpelling(found, unit) });
    }
    return unit;
  };
}
