import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CellContext, CellResult, Inputs, SourceFile } from '../../shared/cell.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { type Schema, tableOf } from '../../shared/table/schema.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { hashBytes } from '../../src/storage/hash-bytes.ts';

/**
 * A kind's example.json:
 *
 *   { "kind": "...", "parameters": {...}, "as_of": "2026-03-31",
 *     "files": { "<key>": "<text of the file>" } or { "<key>": ["line", "line"] },
 *     "inputs": { "<cell>": { "tables": { "<table>": {
 *        "schema": "readings",              (optional: readingsSchema of shared/schemas fills the columns left out)
 *        "columns": { "<column>": { "kind": "number", "unit": "%", "values": [8.8, null, ">4000"] },
 *                     "<column>": { "kind": "date", "values": ["2025-03-01", null] },
 *                     "<column>": { "kind": "text", "values": ["B-07", ""] } } } } } } }
 *
 * With a schema, "kind" and "unit" may be left out, and a column may be just its list of values.
 */
export interface Example {
  readonly kind: string;
  readonly parameters: Readonly<Record<string, unknown>>;
  readonly as_of?: string;
  readonly files?: Readonly<Record<string, string | readonly string[]>>;
  readonly inputs?: Readonly<Record<string, { readonly tables: Readonly<Record<string, ExampleTable>> }>>;
}

interface ExampleTable {
  readonly schema?: string;
  readonly columns: Readonly<Record<string, ExampleColumn | readonly Value[]>>;
}

interface ExampleColumn {
  readonly kind?: Column['kind'];
  readonly unit?: string;
  readonly values: readonly Value[];
}

type Value = number | string | null;

const schemas = import.meta.glob<Record<string, unknown>>('../../shared/schemas/*.ts', { eager: true });

export function exampleOf(kind: string): Example {
  return JSON.parse(readFileSync(join(import.meta.dirname, '../../cells', kind, 'example.json'), 'utf8')) as Example;
}

export function exampleInputs({ inputs = {} }: Example): Inputs {
  return new Map(
    Object.entries(inputs).map(([cell, { tables }]): [string, CellResult] => [
      cell,
      { tables: Object.fromEntries(Object.entries(tables).map(([name, table]) => [name, readTable(table)])) },
    ]),
  );
}

export async function exampleContext({ as_of = '2026-03-31', files = {} }: Example): Promise<CellContext> {
  const sources = new Map<string, SourceFile>();
  for (const [key, text] of Object.entries(files)) {
    const bytes = new TextEncoder().encode(typeof text === 'string' ? text : `${text.join('\n')}\n`);
    const open = async function* (): AsyncGenerator<Uint8Array> {
      yield bytes;
    };
    sources.set(key, { name: key, size: bytes.length, hash: await hashBytes(open()), open });
  }
  return {
    asOf: readIsoDate(as_of),
    seed: 1,
    signal: new AbortController().signal,
    source: (key) => sources.get(key),
    progress: () => {},
    pause: async () => {},
  };
}

function readTable({ schema: name, columns }: ExampleTable): Table {
  const schema = name === undefined ? undefined : schemaNamed(name);
  const read = new Map(
    Object.entries(columns).map(([column, given]) => {
      const { kind, unit, values } = Array.isArray(given)
        ? { values: given as readonly Value[] }
        : (given as ExampleColumn);
      const known = schema?.find((entry) => entry.name === column);
      return [column, readColumn(kind ?? known?.kind ?? 'text', unit ?? known?.unit ?? '1', values)];
    }),
  );
  const rows = [...read.values()].map((column) =>
    column.kind === 'text' ? column.codes.length : column.values.length,
  );
  return schema ? tableOf(schema, rows[0] ?? 0, read) : makeTable(read);
}

/** "setAside" is the export setAsideSchema of one of the files in shared/schemas. */
function schemaNamed(name: string): Schema {
  const found = Object.values(schemas).find((module) => `${name}Schema` in module);
  if (!found) throw new Error(`no file in shared/schemas exports ${name}Schema`);
  return found[`${name}Schema`] as Schema;
}

function readColumn(kind: Column['kind'], unit: string, values: readonly Value[]): Column {
  if (kind === 'text') return textColumn(values.map((value) => String(value ?? '')));
  if (kind === 'date')
    return {
      kind,
      values: Float64Array.from(values, (value) => (value === null ? Number.NaN : readIsoDate(String(value)))),
    };
  const marks = Int8Array.from(values, (value) =>
    String(value).startsWith('>') ? 1 : String(value).startsWith('<') ? -1 : 0,
  );
  const numbers = Float64Array.from(values, (value) =>
    value === null ? Number.NaN : Number(String(value).replace(/^[<>]/, '')),
  );
  return marks.some((mark) => mark !== 0) ? numberColumn(unit, numbers, marks) : numberColumn(unit, numbers);
}
