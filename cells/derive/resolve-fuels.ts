import { findFuel } from '../../shared/fuels/find-fuel.ts';
import type { Fuel } from '../../shared/fuels/fuel.ts';
import { type FuelProperties, fuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { numbersOf, textsOf } from '../../shared/table/columns.ts';
import type { Table, TextColumn } from '../../shared/table/table.ts';
import type { RegisterRows } from './register-rows.ts';

/** Marks of how a row's fuel was found. */
export const ASSUMED = 1;
export const AMBIGUOUS = 2;
export const UNREGISTERED = 4;

export interface ResolvedRows {
  readonly fuel: TextColumn;
  /** Row of the register that counts for the reading, -1 where there is none. */
  readonly registerRow: Int32Array;
  /** ASSUMED, AMBIGUOUS and UNREGISTERED, added. */
  readonly marks: Uint8Array;
  /** Properties by level of `fuel`; undefined for a fuel that nobody knows. */
  readonly properties: readonly (FuelProperties | undefined)[];
  readonly co2maxSdPct: readonly number[];
  /** The fuels that are known, by level of `fuel`. */
  readonly fuels: readonly (Fuel | undefined)[];
  /** Why each unknown fuel is unknown, by its name. */
  readonly unknown: ReadonlyMap<string, string>;
}

/** What a reading of this unit with this fuel as written comes to, if the register does not change with time. */
interface Resolution {
  /** Level of the fuel; -1 where it is that of the register's row, which depends on the day. */
  readonly fuel: number;
  readonly marks: number;
  /** Candidates in the register, latest valid_from first; one only in nearly every case. */
  readonly rows: readonly number[];
}

/** The fuel of each reading: its own, else the register's, else the default, else natural gas. */
export function resolveFuels(
  readings: Table,
  register: RegisterRows,
  defaultFuel: string,
  own: readonly Fuel[],
): ResolvedRows {
  const unit = textsOf(readings, 'unit');
  const written = textsOf(readings, 'fuel');
  const taken = numbersOf(readings, 'taken_at');
  const levels: string[] = [];
  const level = (written: string): number => {
    const found = findFuel(written, own);
    const name = found.status === 'value' ? found.value.name : written;
    const known = levels.indexOf(name);
    return known >= 0 ? known : levels.push(name) - 1;
  };
  const registered = register.fuels.map((name) => (name === '' ? -1 : level(name)));
  const width = written.levels.length + 1;
  // One entry for each pair of unit and written fuel, in place of a look-up by key in every row.
  const known = new Int32Array((unit.levels.length + 1) * width).fill(-1);
  const resolutions: Resolution[] = [];
  const codes = new Int32Array(readings.rows);
  const registerRow = new Int32Array(readings.rows);
  const marks = new Uint8Array(readings.rows);
  for (let row = 0; row < readings.rows; row++) {
    const key = (unit.codes[row] + 1) * width + written.codes[row] + 1;
    if (known[key] < 0) {
      const said = written.codes[row] < 0 ? '' : written.levels[written.codes[row]];
      const name = unit.codes[row] < 0 ? '' : unit.levels[unit.codes[row]];
      known[key] = resolutions.push(resolve(said, register.of(name), registered, register, defaultFuel, level)) - 1;
    }
    const found = resolutions[known[key]];
    const at = found.rows.length === 1 ? found.rows[0] : rowAt(found.rows, register.validFrom, taken[row]);
    registerRow[row] = at;
    codes[row] = found.fuel < 0 ? registered[at] : found.fuel;
    marks[row] = found.marks;
  }
  return { fuel: { kind: 'text', codes, levels }, registerRow, marks, ...propertiesOf(levels, own) };
}

function resolve(
  own: string,
  rows: readonly number[],
  registered: readonly number[],
  register: RegisterRows,
  defaultFuel: string,
  level: (name: string) => number,
): Resolution {
  const latestFirst = [...rows].sort((a, b) => from(register, b) - from(register, a));
  const unregistered = rows.length === 0 ? UNREGISTERED : 0;
  const fuels = [...new Set(rows.map((row) => registered[row]).filter((fuel) => fuel >= 0))];
  if (own === '' && fuels.length > 1) {
    // Another fuel from a day on is a conversion, which the day settles; two fuels at once are not.
    const converted = latestFirst.some((row) => !Number.isNaN(register.validFrom[row]));
    const known = latestFirst.filter((row) => registered[row] >= 0);
    if (converted) return { fuel: -1, marks: 0, rows: known };
    return { fuel: fuels[0], marks: AMBIGUOUS, rows: known.filter((row) => registered[row] === fuels[0]) };
  }
  const assumed = own === '' && fuels.length === 0 && defaultFuel === '' ? ASSUMED : 0;
  const fuel = own === '' && fuels.length === 1 ? fuels[0] : level(own || defaultFuel || 'natural_gas');
  const fitting = latestFirst.filter((row) => registered[row] === fuel || registered[row] < 0);
  return { fuel, marks: assumed + unregistered, rows: fitting.length > 0 ? fitting : latestFirst };
}

/** A row without valid_from holds from the beginning. */
const from = ({ validFrom }: RegisterRows, row: number): number =>
  Number.isNaN(validFrom[row]) ? Number.NEGATIVE_INFINITY : validFrom[row];

function rowAt(latestFirst: readonly number[], validFrom: Float64Array, day: number): number {
  if (latestFirst.length === 0) return -1;
  return latestFirst.find((row) => !(validFrom[row] > day)) ?? latestFirst[latestFirst.length - 1];
}

function propertiesOf(
  levels: readonly string[],
  own: readonly Fuel[],
): Pick<ResolvedRows, 'properties' | 'co2maxSdPct' | 'fuels' | 'unknown'> {
  const unknown = new Map<string, string>();
  const found = levels.map((name) => {
    const fuel = findFuel(name, own);
    if (fuel.status === 'value') return fuel.value;
    if (fuel.status === 'error') unknown.set(name, fuel.message);
    return undefined;
  });
  return {
    properties: found.map((fuel) => fuel && fuelProperties(fuel)),
    fuels: found,
    co2maxSdPct: found.map((fuel) => fuel?.co2maxSdPct ?? Number.NaN),
    unknown,
  };
}
