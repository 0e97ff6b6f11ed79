import type { CellContext, SourceFile } from '../cell.ts';
import { BlockReader } from '../csv/block-reader.ts';
import { readText } from '../csv/read-text.ts';
import { RecordReader } from '../csv/record-reader.ts';
import * as say from '../messages/import.ts';
import { ask, fail, type Outcome, succeed } from '../outcome.ts';
import { askColumn } from './ask-column.ts';
import { classifyLine } from './classify-line.ts';
import { type DateOrder, orderOptions } from './date-order.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { planFile } from './plan-file.ts';
import type { Profile } from './profile.ts';
import { DateReader } from './read-date.ts';
import { NumberReader, READ } from './read-number.ts';
import { rivalsOf } from './rivals-of.ts';
import { answerFor, orderShown } from './settle-dates.ts';
import { unreadColumns } from './unread-columns.ts';
import type { Vocabulary } from './vocabulary.ts';
import { keptText, NOT_UNDERSTOOD, wordMeaning } from './word-meaning.ts';
import { padded, wrongLength } from './wrong-length.ts';

/** A cell that could not be read; it counts as unknown. */
export interface CellFault {
  readonly file: string;
  readonly line: number;
  readonly reason: string;
  /** Whether the whole row is set aside for it. */
  readonly row?: boolean;
}

/** One row of a small table: a register, events, fuel use. Fields that the file does not have are unknown. */
export interface SmallRow {
  readonly file: string;
  readonly line: number;
  /** '' where unknown. */
  text(field: string): string;
  /** In the field's kept unit; NaN where unknown. */
  number(field: string): number;
  /** UCUM code of the unit in which the file gives a field. */
  unit(field: string): string;
  /** Days; NaN where unknown. */
  date(field: string): number;
}

export interface SmallTable {
  readonly rows: readonly SmallRow[];
  /** Cells that were no number, date or word of their list, and lines of the wrong length; grows as cells are asked for. */
  readonly faults: CellFault[];
  /** What is to be known of whole files, a sentence each. */
  readonly notes: readonly string[];
  /** How each file was read. */
  readonly plans: readonly FilePlan[];
}

export interface TableNeeds {
  readonly vocabulary: Vocabulary;
  /** Fields without which the table is of no use. */
  readonly fields: readonly string[];
  /** The same in words, for messages. */
  readonly words: string;
  readonly dateOrder: DateOrder;
  /** Profiles for tables of this kind. */
  readonly profiles: readonly Profile[];
}

/** Reads the rows of small tables by the same rules as readings: dialect, encoding, heads, numbers, dates. */
export async function readTable(
  files: readonly SourceFile[],
  needs: TableNeeds,
  context: CellContext,
): Promise<Outcome<SmallTable>> {
  const rows: SmallRow[] = [];
  const faults: CellFault[] = [];
  const notes: string[] = [];
  const plans: FilePlan[] = [];
  for (const file of files) {
    const plan = await planFile(file, needs.vocabulary, { profiles: needs.profiles, needs: needs.words });
    if (plan.status !== 'value') return plan;
    const missing = missingColumn(plan.value, needs);
    if (missing) return missing;
    if (plan.value.questions.length > 0) return ask(plan.value.questions[0]);
    notes.push(...unreadColumns(plan.value).map(({ heads }) => say.unreadColumnsRemark(file.name, heads)));
    notes.push(...rivalsOf(plan.value).map(({ head, of }) => say.rivalRemark(file.name, head, of)));
    plans.push(plan.value);
    const before = rows.length;
    const dates = await readRows(file, plan.value, needs, rows, faults, context);
    if (rows.length === before) return fail(say.noRows(file.name));
    const question = dateQuestion(plan.value, dates, needs.dateOrder, context.asOf);
    if (question) return question;
  }
  return succeed({ rows, faults, notes, plans });
}

/** A field that the table is of no use without: asked for where a column of the file could be it. */
function missingColumn(plan: FilePlan, { vocabulary, fields, profiles }: TableNeeds): Outcome<never> | undefined {
  const heads = plan.columns.filter(({ field }) => field !== '');
  const missing = fields.find((field) => ![...heads, ...plan.constants].some((column) => column.field === field));
  if (missing === undefined) return undefined;
  return askColumn(plan, vocabulary, missing, missing.replaceAll('_', ' '), profiles);
}

async function readRows(
  file: SourceFile,
  plan: FilePlan,
  { vocabulary, dateOrder }: TableNeeds,
  rows: SmallRow[],
  faults: CellFault[],
  context: CellContext,
): Promise<DateReader> {
  const records = plan.blocks ? new BlockReader(plan.blocks, plan.heads) : new RecordReader(plan.dialect);
  const cells = new CellReader(plan, vocabulary, dateOrder, faults, context.asOf);
  let skip = plan.headRecords;
  const take = (text: string, last: boolean): void => {
    const batch = records.push(text, last);
    batch.rows.forEach((record, i) => {
      if (skip-- > 0 || record.every((cell) => cell.trim() === '')) return;
      const line = batch.lineOf(i);
      const reason = batch.faults.has(i) ? say.openQuote() : wrongLength(record, plan);
      if (reason !== '') {
        if (classifyLine(record, plan, vocabulary) === 'reading')
          faults.push({ file: file.name, line, reason, row: true });
        return;
      }
      rows.push(cells.row(padded(record, plan), line));
    });
  };
  for await (const { text } of readText(file.open(), plan.encoding)) {
    take(text, false);
    await context.pause();
  }
  take('', true);
  return cells.dates;
}

/** Reads single cells on demand; each column has its reader. */
class CellReader {
  readonly dates = new DateReader();
  readonly #plan: FilePlan;
  readonly #vocabulary: Vocabulary;
  readonly #dateOrder: DateOrder;
  readonly #asOf: number;
  readonly #faults: CellFault[];
  readonly #columns: ReadonlyMap<string, ColumnMapping>;
  readonly #numbers = new Map<string, NumberReader>();
  readonly #told = new Set<string>();

  constructor(plan: FilePlan, vocabulary: Vocabulary, dateOrder: DateOrder, faults: CellFault[], asOf: number) {
    this.#plan = plan;
    this.#vocabulary = vocabulary;
    this.#dateOrder = dateOrder;
    this.#faults = faults;
    this.#asOf = asOf;
    this.#columns = new Map(plan.columns.map((column) => [column.field, column]));
  }

  row(record: readonly string[], line: number): SmallRow {
    const { file } = this.#plan;
    // Dates are read at once, so that the order is known when all rows have been seen.
    for (const [field, { index }] of this.#columns)
      if (this.#vocabulary.fields.get(field)?.kind === 'date') this.dates.read(record[index] ?? '');
    const cell = (field: string): string => {
      const column = this.#columns.get(field);
      if (column) return record[column.index] ?? '';
      return this.#plan.constants.find((constant) => constant.field === field)?.value ?? '';
    };
    const at = { file, line };
    return {
      ...at,
      text: (field) => this.#text(field, cell(field), at),
      number: (field) => this.#number(field, cell(field), at),
      unit: (field) => this.#columns.get(field)?.unit ?? '',
      date: (field) => this.#date(field, cell(field), at),
    };
  }

  #text(field: string, written: string, at: { file: string; line: number }): string {
    const known = this.#vocabulary.fields.get(field);
    if (known?.kind !== 'word' || !known.words) return keptText(written);
    const meaning = wordMeaning(known.words)(written);
    if (!meaning.startsWith(NOT_UNDERSTOOD)) return meaning;
    // A fuel that is not understood is an error that the caller words.
    if (field === 'fuel') return written.trim();
    this.#fault(field, { ...at, reason: say.badWord(this.#head(field), written, known.words.replaceAll('_', ' or ')) });
    return '';
  }

  #number(field: string, written: string, at: { file: string; line: number }): number {
    const known = this.#vocabulary.fields.get(field);
    const unit = this.#columns.get(field)?.unit ?? '';
    const reader = this.#numbers.get(field) ?? new NumberReader(this.#plan.decimal, unit, known?.unit ?? unit);
    this.#numbers.set(field, reader);
    const value = reader.read(known?.unit === '{currency}' ? written.replace(/[$€£¥]|[A-Z]{3}/g, '') : written);
    if (reader.status === READ.wrong) this.#fault(field, { ...at, reason: reader.fault(this.#head(field), written) });
    return value;
  }

  #date(field: string, written: string, at: { file: string; line: number }): number {
    if (keptText(written) === '') return Number.NaN;
    const { dates } = this;
    const dayFirst = dates.read(written);
    const [month, year] = [dates.monthFirstValue, dates.yearFirstValue];
    const order = orderShown(this.#plan, dates, this.#asOf) || answerFor(dates, this.#dateOrder, this.#asOf);
    const day = order === 'mdy' ? month : order === 'ymd' && !Number.isNaN(year) ? year : dayFirst;
    if (Number.isNaN(day)) this.#fault(field, { ...at, reason: say.badDate(this.#head(field), written) });
    return day;
  }

  /** Each cell's fault once, however often it is asked for. */
  #fault(field: string, fault: CellFault): void {
    const key = `${fault.line} ${field}`;
    if (!this.#told.has(key)) this.#faults.push(fault);
    this.#told.add(key);
  }

  #head(field: string): string {
    return this.#columns.get(field)?.head.trim() ?? field;
  }
}

function dateQuestion(plan: FilePlan, dates: DateReader, answer: DateOrder, asOf: number): Outcome<never> | undefined {
  if ((orderShown(plan, dates, asOf) || answerFor(dates, answer, asOf)) !== '') return undefined;
  const year = dates.short.pointFirst(asOf);
  if (!year && (dates.open === 0 || dates.dayFirst > 0)) return undefined;
  const options = orderOptions(dates.short.canStandFirst(asOf));
  return ask({
    message: year ? say.tableYearFirst(plan.file) : say.tableDateOrder(plan.file),
    remedy: say.writeIsoDates(),
    byCommand: say.smallDateOrderByCommand(options.length > 2),
    parameter: 'dateOrder',
    options,
  });
}
