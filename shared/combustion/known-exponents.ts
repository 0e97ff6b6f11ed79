import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { type BurnerBehavior, DENSITY_EXPONENTS } from './density-exponents.ts';

/**
 * The exponent of air density over temperature by behavior of the burner: the one that the table beside derived readings
 * says was used (edited, or the fleet's own), else the default.
 */
export function knownExponents(table: Table | undefined): (behavior: BurnerBehavior) => number {
  const used = new Map<string, number>();
  if (table) {
    const behavior = textsOf(table, 'behavior');
    const exponent = numbersOf(table, 'temperature_exponent');
    for (let row = 0; row < table.rows; row++) used.set(textAt(behavior, row), exponent[row]);
  }
  return (behavior) => used.get(behavior) ?? DENSITY_EXPONENTS[behavior].temperature;
}
