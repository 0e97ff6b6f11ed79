import { numberColumn, textColumn } from '../table/columns.ts';
import { type Schema, tableOf } from '../table/schema.ts';
import type { Column, Table } from '../table/table.ts';

/** A record may leave columns out: they are unknown there. */
export type TableRecord = Readonly<Record<string, number | string>>;

/** A table with the schema's columns; what is neither a finite number nor text is unknown. */
export function tableOfRecords(schema: Schema, records: readonly TableRecord[]): Table {
  const columns = schema.map(({ name, kind, unit }): [string, Column] => {
    if (kind === 'text') return [name, textColumn(records.map((record) => String(record[name] ?? '')))];
    const values = Float64Array.from(records, (record) => finite(record[name]));
    return [name, kind === 'date' ? { kind: 'date', values } : numberColumn(unit, values)];
  });
  return tableOf(schema, records.length, new Map(columns));
}

const finite = (value: number | string | undefined): number =>
  typeof value === 'number' && Number.isFinite(value) ? value : Number.NaN;
