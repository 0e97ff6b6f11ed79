import { readingsSchema } from '../../shared/schemas/readings.ts';
import { unitsSchema } from '../../shared/schemas/register.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';

const UNITS = 4200;

/** Seeded numbers, the same on every machine. */
export function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Readings of 4200 units, every column that a derivation reads filled but wet O2 and a second CO2. */
export function manyReadings(rows: number): { readonly readings: Table; readonly units: Table } {
  const next = uniform(1);
  const between = (from: number, to: number): Float64Array =>
    Float64Array.from({ length: rows }, () => from + (to - from) * next());
  const names = Array.from({ length: UNITS }, (_, i) => `U-${i}`);
  const texts = (levels: readonly string[], code: (row: number) => number): Column => ({
    kind: 'text',
    levels,
    codes: Int32Array.from({ length: rows }, (_, row) => code(row)),
  });
  const given = new Map<string, Column>([
    ['unit', texts(names, (row) => row % UNITS)],
    ['taken_at', { kind: 'date', values: between(15_000, 19_000) }],
    ['fire', texts(['high', 'low'], (row) => row & 1)],
    ['state', texts(['as_found', 'as_left'], (row) => (row >> 1) & 1)],
    ['o2_pct', numberColumn('%', between(2, 8))],
    ['co_ppm', numberColumn('[ppm]', between(0, 300), new Int8Array(rows))],
    ['nox_ppm', numberColumn('[ppm]', between(10, 70))],
    ['flue_C', numberColumn('Cel', between(45, 245))],
    ['air_C', numberColumn('Cel', between(-10, 30))],
    ['supply_static_Pa', numberColumn('Pa', between(2400, 2600))],
    ['supply_running_Pa', numberColumn('Pa', between(2200, 2400))],
  ]);
  // The columns left out share one array of unknowns: they are input, and not what is measured.
  const blank = new Float64Array(rows).fill(Number.NaN);
  const noText: Column = { kind: 'text', levels: [], codes: new Int32Array(rows).fill(-1) };
  const all = readingsSchema.map(({ name, kind, unit }): [string, Column] => [
    name,
    given.get(name) ??
      (kind === 'text' ? noText : kind === 'date' ? { kind, values: blank } : { kind, unit, values: blank }),
  ]);
  const register = new Map<string, Column>([
    ['unit', textColumn(names)],
    ['fuel', textColumn(names.map((_, i) => (i % 3 === 0 ? 'no2_oil' : 'natural_gas')))],
    ['burner', textColumn(names.map((_, i) => (i % 2 === 0 ? 'power' : 'premix')))],
  ]);
  return { readings: makeTable(all), units: tableOf(unitsSchema, UNITS, register) };
}
