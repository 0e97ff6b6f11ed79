import { compute, type SavingsResult } from '../../../cells/savings/compute.ts';
import { readParameters } from '../../../cells/savings/parameters.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';
import { type Example, exampleContext, exampleInputs } from '../read-example.ts';

type Columns = Readonly<Record<string, readonly (string | number | null)[]>>;
export type Row = Readonly<Record<string, string | number | null>>;

const columnsOf = (rows: readonly Row[]): Columns =>
  Object.fromEntries(
    [...new Set(rows.flatMap((row) => Object.keys(row)))].map((name) => [name, rows.map((row) => row[name] ?? null)]),
  );

const BASE: Row = {
  unit: 'U-1',
  fuel: 'natural_gas',
  fire: 'high',
  taken_at: '2026-02-01',
  flue_C: 180,
  air_C: 20,
  o2_pct: 5,
  o2_reference_pct: 5,
  efficiency_gross_pct: 82,
  dew_point_C: 54,
  analyzer: 'K-1',
};

interface Others {
  readonly economics?: Row[];
  readonly planning?: Row[];
  readonly drift?: Row[];
  readonly use?: Row[];
}

/** The savings table of readings, each given with what is derived from it. */
export async function savingsOf(rows: readonly Row[], tables: Others = {}, parameters: Row = {}): Promise<Table> {
  return (await savingsResultOf(rows, tables, parameters)).tables['savings'];
}

/** The whole result of the cell over the same. */
export async function savingsResultOf(
  rows: readonly Row[],
  tables: Others = {},
  parameters: Row = {},
): Promise<SavingsResult> {
  const columns = columnsOf(rows.map((row) => ({ ...BASE, ...row })));
  const pick = (schema: 'readings' | 'derived'): Columns =>
    Object.fromEntries(
      Object.entries(columns).filter(([name]) =>
        schema === 'readings'
          ? !/reference|efficiency|dew/.test(name)
          : !/_C$|analyzer|visit/.test(name) || /dew/.test(name),
      ),
    );
  const read = readParameters({
    drift: tables.drift ? 'drift' : '',
    fuelUse: tables.use ? 'fuel-use' : '',
    ...parameters,
  });
  if (read.status !== 'value') throw new Error(JSON.stringify(read));
  const example: Example = {
    kind: 'savings',
    parameters: {},
    as_of: '2026-03-31',
    inputs: {
      readings: { tables: { accepted: { schema: 'readings', columns: pick('readings') } } },
      derive: { tables: { derived: { schema: 'derived', columns: pick('derived') } } },
      register: {
        tables: {
          economics: { schema: 'economics', columns: columnsOf(tables.economics ?? []) },
          planning: { schema: 'planning', columns: columnsOf(tables.planning ?? []) },
        },
      },
      drift: { tables: { drift: { schema: 'drift', columns: columnsOf(tables.drift ?? []) } } },
      'fuel-use': { tables: { use: { schema: 'fuelUse', columns: columnsOf(tables.use ?? []) } } },
    },
  };
  const result = await compute(read.value, exampleInputs(example), await exampleContext(example));
  if (result.status !== 'value') throw new Error(JSON.stringify(result));
  return result.value;
}

export const at = (table: Table, column: string, row = 0): number => numbersOf(table, column)[row];
export const said = (table: Table, column: string, row = 0): string => textAt(textsOf(table, column), row);
