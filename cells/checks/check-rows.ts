import { findFuel } from '../../shared/fuels/find-fuel.ts';
import { type FuelProperties, fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { boundsOf, numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';

/** A readings table as the rules look at it; rows are sorted by unit and time. */
export interface CheckRows {
  readonly count: number;
  readonly units: TextColumn;
  readonly taken: Float64Array;
  number(column: string): Float64Array;
  text(column: string): TextColumn;
  bounds(column: string): Int8Array;
  /** Of the row's fuel: the reading's own, else the only one the register gives its unit; undefined where not known. */
  fuel(row: number): FuelProperties | undefined;
  fuelName(row: number): string;
  /** Runs of rows of one unit: [from, to). */
  readonly byUnit: readonly (readonly [from: number, to: number])[];
  building(row: number): string;
  installedOn(row: number): number;
}

export function checkRows(readings: Table, register: Table | undefined): CheckRows {
  const units = textsOf(readings, 'unit');
  const written = textsOf(readings, 'fuel');
  const known = registered(register);
  const properties = new Map<string, FuelProperties | undefined>();
  const fuelName = (row: number): string => textAt(written, row) || (known.get(textAt(units, row))?.fuel ?? '');
  return {
    count: readings.rows,
    units,
    taken: numbersOf(readings, 'taken_at'),
    number: remembered((column) => numbersOf(readings, column)),
    text: remembered((column) => textsOf(readings, column)),
    bounds: remembered((column) => boundsOf(readings, column)),
    fuelName,
    fuel: (row) => {
      const name = fuelName(row);
      if (!properties.has(name)) {
        const found = name === '' ? undefined : findFuel(name);
        properties.set(name, found?.status === 'value' ? fuelProperties(found.value) : undefined);
      }
      return properties.get(name);
    },
    byUnit: runs(units.codes),
    building: (row) => known.get(textAt(units, row))?.building ?? '',
    installedOn: (row) => known.get(textAt(units, row))?.installedOn ?? Number.NaN,
  };
}

/** A column that is missing comes as a new array of unknowns; one is enough. */
function remembered<T>(find: (column: string) => T): (column: string) => T {
  const known = new Map<string, T>();
  return (column) => {
    const found = known.get(column) ?? find(column);
    known.set(column, found);
    return found;
  };
}

function runs(codes: Int32Array): [number, number][] {
  const found: [number, number][] = [];
  for (let from = 0; from < codes.length; ) {
    let to = from + 1;
    while (to < codes.length && codes[to] === codes[from]) to++;
    found.push([from, to]);
    from = to;
  }
  return found;
}

interface Registered {
  readonly fuel: string;
  readonly building: string;
  readonly installedOn: number;
}

function registered(units: Table | undefined): ReadonlyMap<string, Registered> {
  const found = new Map<string, Registered>();
  if (!units) return found;
  const [unit, fuel, building] = ['unit', 'fuel', 'building'].map((name) => textsOf(units, name));
  const installed = numbersOf(units, 'installed_on');
  for (let row = 0; row < units.rows; row++) {
    const name = textAt(unit, row);
    const before = found.get(name);
    // A unit on two fuels has no fuel of its own.
    const own = before && before.fuel !== textAt(fuel, row) ? '' : textAt(fuel, row);
    found.set(name, { fuel: own, building: textAt(building, row), installedOn: installed[row] });
  }
  return found;
}
