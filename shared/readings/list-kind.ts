import type { CellKind, CellResult, Read, Remark } from '../cell.ts';
import { faultsSchema } from '../schemas/readings.ts';
import { readOf } from '../sentence/read-of.ts';
import { registerBlank } from '../sentence/register-blank.ts';
import { textsOf } from '../table/columns.ts';
import { type Schema, shownColumns } from '../table/schema.ts';
import { FILE_COLUMNS } from './columns-table.ts';
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
  /** What it reads beside the register. */
  reads?(parameters: Parameters): readonly Read[];
  remarks?(result: Result): readonly Remark[];
  /** Tables of its own beside the list. */
  readonly further?: readonly { readonly table: string; readonly title: string; readonly schema: Schema }[];
}

/** A kind of cell that brings in a list about the units, such as events: rows of files, unit ids as the register spells them. */
export function listKind<Parameters extends ListParameters, Result extends ListResult>(
  own: ListOf<Parameters, Result>,
): CellKind<Parameters, Result> {
  const { name, title, purpose, begins, table, schema, answer, readParameters, compute, further = [] } = own;
  return {
    name,
    title,
    purpose,
    readParameters,
    reads: (parameters) => [...readOf(parameters.register, 'units'), ...(own.reads?.(parameters) ?? [])],
    sources: ({ files }) => files,
    sentence: ({ files, register }) => [
      begins,
      fileList(files),
      ', with unit ids as spelled in ',
      registerBlank(register),
      '.',
    ],
    compute,
    describe: (result) => {
      const { tables, faults, notes } = result;
      return {
        answer: answer(tables[table].rows, new Set(textsOf(tables[table], 'unit').codes).size, leftOut(faults)),
        tables: [
          { table, title, columns: shownColumns(schema) },
          ...further.map((one) => ({ ...one, columns: shownColumns(one.schema) })),
          { table: 'faults', title: 'Not used', columns: shownColumns(faultsSchema) },
          FILE_COLUMNS,
        ],
        figures: [],
        remarks: [...faultRemarks(faults, notes), ...(own.remarks?.(result) ?? [])],
      };
    },
  };
}
