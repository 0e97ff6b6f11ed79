import type { RowKey } from '../../shared/corrections/correction.ts';
import { findFuel } from '../../shared/fuels/find-fuel.ts';
import type { Fuel } from '../../shared/fuels/fuel.ts';
import { type FuelProperties, fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { writeIsoDate } from '../../shared/quantities/dates.ts';
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
  /** By which a correction finds the row. */
  key(row: number): RowKey;
  building(row: number): string;
  installedOn(row: number): number;
  /** The rating plate's supply pressures, Pa; NaN where not known. */
  plate(row: number): readonly [lower: number, upper: number];
}

/** The register's tables, as far as the notebook has them. */
export interface RegisterTables {
  readonly units?: Table | undefined;
  readonly supplyLimits?: Table | undefined;
}

export function checkRows(readings: Table, register: RegisterTables, own: readonly Fuel[]): CheckRows {
  const units = textsOf(readings, 'unit');
  const taken = numbersOf(readings, 'taken_at');
  const known = registered(register.units);
  const plates = platesOf(register.supplyLimits);
  const ofUnit = units.levels.map((unit) => known.get(unit));
  return {
    count: readings.rows,
    units,
    taken,
    number: remembered((column) => numbersOf(readings, column)),
    text: remembered((column) => textsOf(readings, column)),
    bounds: remembered((column) => boundsOf(readings, column)),
    ...fuelsOf(readings, units, ofUnit, own),
    byUnit: runs(units.codes),
    key: (row) => keyOf(readings, row),
    building: (row) => ofUnit[units.codes[row]]?.building ?? '',
    installedOn: (row) => ofUnit[units.codes[row]]?.installedOn ?? Number.NaN,
    plate: (row) => plates.get(textAt(units, row)) ?? [Number.NaN, Number.NaN],
  };
}

/** Fuels are found once for each word of the readings and each unit, since there are millions of rows. */
function fuelsOf(
  readings: Table,
  units: TextColumn,
  ofUnit: readonly (Registered | undefined)[],
  own: readonly Fuel[],
): Pick<CheckRows, 'fuel' | 'fuelName'> {
  const { codes, levels } = textsOf(readings, 'fuel');
  const properties = new Map<string, FuelProperties | undefined>();
  const find = (name: string): FuelProperties | undefined => {
    if (!properties.has(name)) {
      const found = name === '' ? undefined : findFuel(name, own);
      properties.set(name, found?.status === 'value' ? fuelProperties(found.value) : undefined);
    }
    return properties.get(name);
  };
  const byWord = levels.map(find);
  const byUnit = ofUnit.map((unit) => find(unit?.fuel ?? ''));
  return {
    fuel: (row) => (codes[row] >= 0 ? byWord[codes[row]] : byUnit[units.codes[row]]),
    fuelName: (row) => (codes[row] >= 0 ? levels[codes[row]] : (ofUnit[units.codes[row]]?.fuel ?? '')),
  };
}

const KEY = ['unit', 'fire', 'state', 'fuel'] as const;

/** Rows that agree in their key stand together, since they are sorted by it but for the fuel. */
function keyOf(readings: Table, row: number): RowKey {
  const columns = KEY.map((name) => textsOf(readings, name));
  const taken = numbersOf(readings, 'taken_at');
  let nth = 1;
  const sameTest = (other: number): boolean =>
    taken[other] === taken[row] && columns.slice(0, 3).every(({ codes }) => codes[other] === codes[row]);
  for (let other = row - 1; other >= 0 && sameTest(other); other--)
    if (columns[3].codes[other] === columns[3].codes[row]) nth++;
  const [unit, fire, state, fuel] = columns.map((column) => textAt(column, row));
  return { unit, taken_at: writeIsoDate(taken[row]), fire, state, fuel, nth };
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

function platesOf(limits: Table | undefined): ReadonlyMap<string, readonly [number, number]> {
  if (!limits) return new Map();
  const unit = textsOf(limits, 'unit');
  const [lower, upper] = ['supply_min_Pa', 'supply_max_Pa'].map((name) => numbersOf(limits, name));
  return new Map(Array.from({ length: limits.rows }, (_, row) => [textAt(unit, row), [lower[row], upper[row]]]));
}
