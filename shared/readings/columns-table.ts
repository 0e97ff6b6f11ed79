import type { ShownTable } from '../cell.ts';
import { columnsOfFiles } from '../messages/columns.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { columnsSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { shownColumns } from '../table/schema.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import type { UnknownWord } from './unknown-words.ts';

/** The table as cells offer it. */
export const FILE_COLUMNS: ShownTable = {
  table: 'columns',
  title: columnsOfFiles(),
  columns: shownColumns(columnsSchema.filter(({ name }) => name !== 'unit_code')),
};

/** Stands between the words of a column that nobody knows. */
export const WORD_SEPARATOR = '; ';

const wordsIn = (words: readonly UnknownWord[], file: string, { head, field }: ColumnMapping): readonly string[] =>
  words.filter((one) => one.file === file && one.head === head.trim() && one.field === field).map(({ word }) => word);

interface ColumnLine {
  /** The whole file's name, also for a part of it. */
  readonly file: string;
  readonly plan: FilePlan;
  readonly column: ColumnMapping;
  /** Line of the head; NaN for the head at the beginning of the file. */
  readonly line: number;
}

/** What each column of each file was taken for, and why: a row a column, in the order of the files. */
export function columnsTable(plans: readonly FilePlan[], words: readonly UnknownWord[] = []): Table {
  const lines = plans.flatMap(linesOf);
  const texts = (of: (line: ColumnLine) => string): Column => textColumn(lines.map(of));
  const numbers = (unit: string, of: (line: ColumnLine) => number): Column =>
    numberColumn(unit, Float64Array.from(lines, of));
  const values: Readonly<Record<string, Column>> = {
    source_file: texts(({ plan }) => plan.file),
    source_line: numbers('1', ({ line }) => line),
    place: numbers('1', ({ column }) => column.index + 1),
    head: texts(({ column }) => column.head.trim()),
    first_value: texts(({ plan, column }) => plan.firstValues[column.index] ?? ''),
    taken_for: texts(({ column }) => column.field),
    unit_code: texts(({ column }) => column.unit),
    unit_shown: texts(({ column }) => findUnit(column.unit)?.shown ?? column.unit),
    fire: texts(({ column }) => column.fire),
    state: texts(({ column }) => column.state),
    sure_pct: numbers('%', ({ column }) => (column.field === '' ? Number.NaN : 100 * column.confidence)),
    reason: texts(({ column }) => column.reason),
    unknown_words: texts(({ file, column }) => wordsIn(words, file, column).join(WORD_SEPARATOR)),
    profile: texts(({ plan }) => plan.profile),
  };
  return makeTable(columnsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

function linesOf(plan: FilePlan): ColumnLine[] {
  const first = plan.columns.map((column): ColumnLine => ({ file: plan.file, plan, column, line: Number.NaN }));
  const further = (plan.sections ?? []).flatMap(({ plan: part, own, line }) =>
    part && !own ? part.columns.map((column): ColumnLine => ({ file: plan.file, plan: part, column, line })) : [],
  );
  return [...first, ...further];
}
