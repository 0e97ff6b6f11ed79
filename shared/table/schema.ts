import type { ShownColumn } from '../cell.ts';
import { type Column, makeTable, type Table } from './table.ts';

/** One column of a table that the project writes: its name in files, its type and unit, and how people read it. */
export interface SchemaColumn {
  readonly name: string;
  readonly kind: Column['kind'];
  /** UCUM code; '' for dates and text. */
  readonly unit: string;
  /** Head as people read it. */
  readonly title: string;
  /** Unit as people read it. */
  readonly shownUnit: string;
  readonly digits: number;
}

export type Schema = readonly SchemaColumn[];

export const numeric = (
  name: string,
  unit: string,
  title: string,
  shownUnit: string,
  digits: number,
): SchemaColumn => ({
  name,
  kind: 'number',
  unit,
  title,
  shownUnit,
  digits,
});
export const text = (name: string, title: string): SchemaColumn => ({
  name,
  kind: 'text',
  unit: '',
  title,
  shownUnit: '',
  digits: 0,
});
export const date = (name: string, title: string): SchemaColumn => ({
  name,
  kind: 'date',
  unit: '',
  title,
  shownUnit: '',
  digits: 0,
});

/** A column of unknowns. */
export function unknownColumn({ kind, unit }: SchemaColumn, rows: number): Column {
  if (kind === 'text') return { kind, codes: new Int32Array(rows).fill(-1), levels: [] };
  const values = new Float64Array(rows).fill(Number.NaN);
  return kind === 'date' ? { kind, values } : { kind, unit, values };
}

/** A table with all columns of the schema, in its order; those not given are unknown. */
export function tableOf(schema: Schema, rows: number, given: ReadonlyMap<string, Column>): Table {
  return makeTable(schema.map((column) => [column.name, given.get(column.name) ?? unknownColumn(column, rows)]));
}

/** Names of the schema that the table lacks or holds in another type. */
export function missingColumns(schema: Schema, table: Table): string[] {
  return schema.filter(({ name, kind }) => table.columns.get(name)?.kind !== kind).map(({ name }) => name);
}

export function shownColumns(schema: Schema): ShownColumn[] {
  return schema.map(({ name, title, shownUnit, digits }) => ({ column: name, title, unit: shownUnit, digits }));
}
