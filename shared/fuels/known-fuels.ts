import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { findFuel } from './find-fuel.ts';
import { type FuelProperties, fuelProperties } from './fuel-properties.ts';

/**
 * What a fuel of a name burns like: as the table of fuels beside derived readings has it (the notebook's own fuels are only
 * there), else as the list of fuels has it; undefined where nobody knows it.
 */
export function knownFuels(table: Table | undefined): (name: string) => FuelProperties | undefined {
  const known = new Map<string, FuelProperties | undefined>(propertiesInTable(table));
  return (name) => {
    if (!known.has(name)) {
      const found = findFuel(name);
      known.set(name, found.status === 'value' ? fuelProperties(found.value) : undefined);
    }
    return known.get(name);
  };
}

/** Properties of the fuels of such a table by name, the notebook's own among them. */
function propertiesInTable(table: Table | undefined): ReadonlyMap<string, FuelProperties> {
  const found = new Map<string, FuelProperties>();
  if (!table) return found;
  const fuel = textsOf(table, 'fuel');
  const number = (name: string): Float64Array => numbersOf(table, name);
  const [air, oxygen, carbonDioxide, nitrogen, water] = ['air', 'oxygen', 'carbon_dioxide', 'nitrogen', 'water'].map(
    number,
  );
  const [dryFlue, co2max, dryRatio, net] = ['dry_flue', 'co2_max_pct', 'dry_ratio', 'net_over_gross'].map(number);
  for (let row = 0; row < table.rows; row++)
    found.set(textAt(fuel, row), {
      air: air[row],
      oxygen: oxygen[row],
      carbonDioxide: carbonDioxide[row],
      nitrogen: nitrogen[row],
      water: water[row],
      dryFlue: dryFlue[row],
      co2maxPct: co2max[row],
      dryRatio: dryRatio[row],
      netOverGross: net[row],
      // The table has heat by mass and by volume, and none by mole.
      gross: Number.NaN,
    });
  return found;
}
