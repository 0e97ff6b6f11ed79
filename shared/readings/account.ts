import type { SourceFile } from '../cell.ts';
import { type RecordEnd, readLines } from '../csv/read-lines.ts';
import * as say from '../messages/import.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { accountSchema, duplicatesSchema, setAsideSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import type { Schema } from '../table/schema.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import { CheckedBytes } from './checked-bytes.ts';
import type { LineKind } from './classify-line.ts';
import type { FileRead, SetAside } from './file-read.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

/** rows_read = accepted + set_aside + duplicates, always. */
export interface FileAccount {
  readonly file: string;
  readonly rows_read: number;
  readonly accepted: number;
  readonly set_aside: number;
  readonly duplicates: number;
  /** Lines of the file by what they are, beside the readings. */
  readonly lines: Readonly<Record<LineKind, number>>;
}

interface Duplicate {
  readonly file: string;
  readonly line: number;
  readonly ofFile: string;
  readonly ofLine: number;
}

/** Counts what became of every proposed reading, and lays out the rows that were not accepted, with their text. */
export async function accountTables(
  files: readonly SourceFile[],
  columns: ReadingColumns,
  reads: readonly FileRead[],
  setAside: readonly SetAside[],
  duplicates: readonly Duplicate[],
): Promise<Outcome<{ account: FileAccount[]; tables: { account: Table; setAside: Table; duplicates: Table } }>> {
  const account = reads.map(({ lines }, file) => {
    let accepted = 0;
    let copies = 0;
    for (let row = columns.fileStarts[file]; row < columns.fileEnd(file); row++) {
      if (columns.status[row] === ROW.accepted) accepted++;
      if (columns.status[row] === ROW.duplicate) copies++;
    }
    const aside = setAside.filter((row) => row.file === file).length;
    const rows = accepted + copies + aside;
    return { file: columns.files[file], rows_read: rows, accepted, set_aside: aside, duplicates: copies, lines };
  });
  const aside = await setAsideTable(files, columns.files, reads, setAside);
  if (aside.status !== 'value') return aside;
  const tables = {
    account: accountTable(account),
    setAside: aside.value,
    duplicates: duplicatesTable(duplicates),
  };
  return succeed({ account, tables });
}

function accountTable(files: readonly FileAccount[]): Table {
  return fromTexts(accountSchema, [
    files.map(({ file }) => file),
    files.map(({ rows_read }) => rows_read),
    files.map(({ accepted }) => accepted),
    files.map(({ set_aside }) => set_aside),
    files.map(({ duplicates }) => duplicates),
  ]);
}

function duplicatesTable(rows: readonly Duplicate[]): Table {
  return fromTexts(duplicatesSchema, [
    rows.map(({ file }) => file),
    rows.map(({ line }) => line),
    rows.map(({ ofFile }) => ofFile),
    rows.map(({ ofLine }) => ofLine),
  ]);
}

/** By file name and line, whatever the order of the files; the text is fetched by a second read, in which the file must be the same. */
async function setAsideTable(
  files: readonly SourceFile[],
  names: readonly string[],
  reads: readonly FileRead[],
  setAside: readonly SetAside[],
): Promise<Outcome<Table>> {
  const order = (a: SetAside, b: SetAside): number =>
    a.file === b.file ? a.line - b.line : names[a.file] < names[b.file] ? -1 : 1;
  const rows = [...setAside].sort(order);
  const texts = new Map<number, Map<number, string>>();
  for (const file of new Set(rows.map((row) => row.file))) {
    const { encoding, dialect, blocks } = reads[file].plan;
    const ends = rows.flatMap((row): [number, RecordEnd][] =>
      row.file === file ? [[row.line, blocks ? 'blank' : row.oneLine ? 'line' : 'quote']] : [],
    );
    const again = new CheckedBytes(files[file]);
    texts.set(file, await readLines(again.bytes(), encoding, dialect.newline, new Map(ends)));
    if (!again.same()) return fail(say.changedWhileRead(names[file]));
  }
  const table = fromTexts(setAsideSchema, [
    rows.map(({ file }) => names[file]),
    rows.map(({ line }) => line),
    rows.map(({ reason }) => reason),
    rows.map(({ file, line }) => texts.get(file)?.get(line) ?? ''),
  ]);
  return succeed(table);
}

function fromTexts(schema: Schema, columns: readonly (readonly (string | number)[])[]): Table {
  return makeTable(
    schema.map(({ name, kind, unit }, i): [string, Column] =>
      kind === 'text'
        ? [name, textColumn(columns[i].map(String))]
        : [name, numberColumn(unit, Float64Array.from(columns[i], Number))],
    ),
  );
}
