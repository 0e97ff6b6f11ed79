import type { SourceFile } from '../cell.ts';
import { readLines } from '../csv/read-lines.ts';
import { accountSchema, duplicatesSchema, setAsideSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import type { Schema } from '../table/schema.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import type { LineKind } from './classify-line.ts';
import type { FileRead, SetAside } from './read-file.ts';
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
): Promise<{ account: FileAccount[]; tables: { account: Table; setAside: Table; duplicates: Table } }> {
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
  return {
    account,
    tables: {
      account: accountTable(account),
      setAside: await setAsideTable(files, columns.files, reads, setAside),
      duplicates: duplicatesTable(duplicates),
    },
  };
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

/** In the order of files and lines; the text is fetched by a second read. */
async function setAsideTable(
  files: readonly SourceFile[],
  names: readonly string[],
  reads: readonly FileRead[],
  setAside: readonly SetAside[],
): Promise<Table> {
  const rows = [...setAside].sort((a, b) => a.file - b.file || a.line - b.line);
  const texts = new Map<number, Map<number, string>>();
  for (const file of new Set(rows.map((row) => row.file))) {
    const { encoding, dialect } = reads[file].plan;
    const wanted = new Set(rows.filter((row) => row.file === file).map(({ line }) => line));
    texts.set(file, await readLines(files[file].open(), encoding, dialect.newline, wanted));
  }
  return fromTexts(setAsideSchema, [
    rows.map(({ file }) => names[file]),
    rows.map(({ line }) => line),
    rows.map(({ reason }) => reason),
    rows.map(({ file, line }) => texts.get(file)?.get(line) ?? ''),
  ]);
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
