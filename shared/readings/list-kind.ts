import type { CellKind, CellResult } from '../cell.ts';
import { faultsSchema } from '../schemas/readings.ts';
import { readOf } from '../sentence/read-of.ts';
import { registerBlank } from '../sentence/register-blank.ts';
import { textsOf } from '../table/columns.ts';
import { type Schema, shownColumns } from '../table/schema.ts';
import { fileList } from './file-list.ts';
import type { CellFault } from './read-table.ts';
import { faultRemarks, leftOut } from './told-faults.ts';

interface ListParameters {
  readonly files: readonly string[];
  readonly register: string;
}

interface ListResult extends CellResult {
  readonly faults: readonly CellFault[];
  readonly notes: readonly string[];
}

/** What a kind of list has of its own. */
interface ListOf<Parameters, Result extends CellResult>
  extends Pick<CellKind<Parameters, Result>, 'name' | 'title' | 'purpose' | 'readParameters' | 'compute'> {
  /** The sentence up to its files. */
  readonly begins: string;
  readonly table: string;
  readonly schema: Schema;
  answer(rows: number, units: number, leftOut: number): string;
}

/** A kind of cell that brings in a list about the units, such as events: rows of files, unit ids as the register spells them. */
export function listKind<Parameters extends ListParameters, Result extends ListResult>(
  own: ListOf<Parameters, Result>,
): CellKind<Parameters, Result> {
  const { name, title, purpose, begins, table, schema, answer, readParameters, compute } = own;
  return {
    name,
    title,
    purpose,
    readParameters,
    reads: ({ register }) => readOf(register, 'units'),
    sources: ({ files }) => files,
    sentence: ({ files, register }) => [
      begins,
      fileList(files),
      ', with unit ids as spelled in ',
      registerBlank(register),
      '.',
    ],
    compute,
    describe: ({ tables, faults, notes }) => ({
      answer: answer(tables[table].rows, new Set(textsOf(tables[table], 'unit').codes).size, leftOut(faults)),
      tables: [
        { table, title, columns: shownColumns(schema) },
        { table: 'faults', title: 'Not used', columns: shownColumns(faultsSchema) },
      ],
      figures: [],
      remarks: faultRemarks(faults, notes),
    }),
  };
}
