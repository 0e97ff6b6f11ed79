import { compute, type DeriveResult } from '../../../cells/derive/compute.ts';
import { readParameters } from '../../../cells/derive/parameters.ts';
import type { CellContext, Inputs } from '../../../shared/cell.ts';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { unitsSchema } from '../../../shared/schemas/register.ts';
import { numberColumn, textAt, textColumn, textsOf } from '../../../shared/table/columns.ts';
import { type Schema, tableOf } from '../../../shared/table/schema.ts';
import type { Column, Table } from '../../../shared/table/table.ts';

/** A row as a person writes it: ">4000" is a bound, what is left out is unknown. */
export type Row = Readonly<Record<string, number | string>>;

export const CONTEXT: CellContext = {
  asOf: readIsoDate('2026-03-31'),
  seed: 1,
  signal: new AbortController().signal,
  source: () => undefined,
  progress: () => {},
  pause: async () => {},
};

function columnOf(schema: Schema[number], rows: readonly Row[]): Column {
  const cells = rows.map((row) => row[schema.name] ?? '');
  if (schema.kind === 'text') return textColumn(cells.map(String));
  if (schema.kind === 'date')
    return { kind: 'date', values: Float64Array.from(cells, (cell) => readIsoDate(String(cell))) };
  const bounds = Int8Array.from(cells, (cell) =>
    String(cell).startsWith('>') ? 1 : String(cell).startsWith('<') ? -1 : 0,
  );
  const values = Float64Array.from(cells, (cell) =>
    cell === '' ? Number.NaN : Number(String(cell).replace(/^[<>]/, '')),
  );
  return numberColumn(schema.unit, values, bounds.some((mark) => mark !== 0) ? bounds : undefined);
}

export function tableFrom(schema: Schema, rows: readonly Row[]): Table {
  return tableOf(schema, rows.length, new Map(schema.map((column) => [column.name, columnOf(column, rows)])));
}

const USUAL: Row = { unit: 'A-1', taken_at: '2025-10-02', fire: 'high', state: 'as_found' };

export async function deriveReadings(
  rows: readonly Row[],
  {
    parameters = {},
    units = [{ unit: 'A-1', fuel: 'natural_gas', burner: 'power', fuel_air_control: 'linkage' }],
  }: {
    readonly parameters?: unknown;
    readonly units?: readonly Row[];
  } = {},
): Promise<DeriveResult> {
  const read = readParameters(parameters);
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const inputs: Inputs = new Map([
    [
      'readings',
      {
        tables: {
          accepted: tableFrom(
            readingsSchema,
            rows.map((row) => ({ ...USUAL, ...row })),
          ),
        },
      },
    ],
    ['register', { tables: { units: tableFrom(unitsSchema, units) } }],
  ]);
  const result = await compute(read.value, inputs, CONTEXT);
  if (result.status !== 'value') throw new Error(result.status === 'error' ? result.message : 'a question');
  return result.value;
}

/** Reads one cell of derived: a number, or text. */
export function cellOf({ tables }: DeriveResult, row: number, name: string): number | string {
  const column = tables.derived.columns.get(name);
  if (!column) throw new Error(`no column ${name}`);
  return column.kind === 'text' ? textAt(textsOf(tables.derived, name), row) : column.values[row];
}

/** The first row of what is derived. */
export const one = async (row: Row, options?: Parameters<typeof deriveReadings>[1]) => {
  const result = await deriveReadings([row], options);
  return (name: string) => cellOf(result, 0, name);
};
export const flagsOf = async (row: Row, options?: Parameters<typeof deriveReadings>[1]) =>
  String((await one(row, options))('flags'))
    .split(' ')
    .filter(Boolean);
