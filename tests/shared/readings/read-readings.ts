import Papa from 'papaparse';
import type { ReadingsResult } from '../../../cells/readings/compute.ts';
import { kind } from '../../../cells/readings/kind.ts';
import type { Inputs, SourceFile } from '../../../shared/cell.ts';
import { writeCsv } from '../../../shared/csv/write-csv.ts';
import type { Outcome } from '../../../shared/outcome.ts';
import type { Table } from '../../../shared/table/table.ts';
import { contextOf, fileOf } from './file-of.ts';

/** Runs the readings cell over files, with parameters as a notebook holds them. */
export async function readReadings(
  files: readonly SourceFile[],
  parameters: Readonly<Record<string, unknown>> = {},
  inputs: Inputs = new Map(),
): Promise<Outcome<ReadingsResult>> {
  const read = kind.readParameters({ files: files.map(({ name }) => name), register: '', ...parameters });
  return read.status === 'value' ? kind.compute(read.value, inputs, contextOf(files), undefined) : read;
}

/** As above where only a value will do. */
export async function accepted(
  content: string | Uint8Array | readonly SourceFile[],
  parameters: Readonly<Record<string, unknown>> = {},
): Promise<ReadingsResult> {
  const files =
    typeof content === 'string' || content instanceof Uint8Array ? [fileOf('export.csv', content)] : content;
  const outcome = await readReadings(files, parameters);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  return outcome.value;
}

export type Row = Readonly<Record<string, string>>;

/** A table as its CSV reads, by another parser. */
export function rowsOf(table: Table): Row[] {
  return Papa.parse<Row>([...writeCsv(table)].join(''), { header: true, skipEmptyLines: true }).data;
}
