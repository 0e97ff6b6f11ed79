import { textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** Of each unit, the names of what it shares its gas line with: its building (at its site) and its gas zone, where the register has them. */
export function gasLines(units: Table | undefined): (unit: string) => readonly string[] {
  const lines = new Map<string, string[]>();
  if (units) {
    const [unit, site, building, zone] = ['unit', 'site', 'building', 'gas_zone'].map((name) => textsOf(units, name));
    for (let row = 0; row < units.rows; row++) {
      const [house, gas] = [textAt(building, row), textAt(zone, row)];
      const own = [house === '' ? '' : `building ${textAt(site, row)} ${house}`, gas === '' ? '' : `zone ${gas}`];
      lines.set(
        textAt(unit, row),
        own.filter((line) => line !== ''),
      );
    }
  }
  return (unit) => lines.get(unit) ?? [];
}
