import type { CellContext, SourceFile } from '../cell.ts';
import { eightBit } from '../csv/encoding.ts';
import { readText, WrongEncoding } from '../csv/read-text.ts';
import { type RecordBatch, RecordReader } from '../csv/record-reader.ts';
import * as say from '../messages/import.ts';
import { classifyLine, type LineKind } from './classify-line.ts';
import type { FilePlan } from './mapping.ts';
import { preambleConstants } from './preamble.ts';
import { NumberReader, READ } from './read-number.ts';
import type { ReadingColumns } from './reading-columns.ts';
import { RowReader } from './row-reader.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A proposed reading that is not accepted. */
export interface SetAside {
  readonly file: number;
  readonly line: number;
  readonly reason: string;
  /** Its CO as written, where that is high: such a row is listed first. */
  readonly highCo: string;
}

/** What one file held, beside the rows that went into the columns. */
export interface FileRead {
  readonly plan: FilePlan;
  readonly reader: RowReader;
  readonly setAside: readonly SetAside[];
  /** Lines by what they are; those of readings are counted as records. */
  readonly lines: Readonly<Record<LineKind, number>>;
  /** Lines on which CO is dashes beside other values. */
  readonly coDashes: readonly number[];
}

/** CO as measured from which a set-aside row is named first, ppm: the usual line for shutting down (common practice). */
const HIGH_CO_PPM = 400;

/** Reads one file into the columns, as its plan says. Bytes that turn out not to be UTF-8 make it start over. */
export async function readFile(
  file: SourceFile,
  plan: FilePlan,
  vocabulary: Vocabulary,
  columns: ReadingColumns,
  context: CellContext,
): Promise<FileRead> {
  const start = columns.rows;
  try {
    return await new FileReading(file, plan, vocabulary, columns).read(context);
  } catch (error) {
    if (!(error instanceof WrongEncoding)) throw error;
    columns.truncate(start);
    const western = { ...plan, encoding: eightBit(new Uint8Array()).encoding, encodingReason: 'not UTF-8 throughout' };
    return await new FileReading(file, western, vocabulary, columns).read(context);
  }
}

class FileReading {
  readonly #file: SourceFile;
  readonly #plan: FilePlan;
  readonly #vocabulary: Vocabulary;
  readonly #columns: ReadingColumns;
  readonly #reader: RowReader;
  readonly #setAside: SetAside[] = [];
  readonly #coDashes: number[] = [];
  readonly #lines: Record<LineKind, number> = { blank: 0, head: 0, preamble: 0, summary: 0, footer: 0, reading: 0 };
  readonly #number: number;
  readonly #needed: number;
  #recordsToSkip: number;

  constructor(file: SourceFile, plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns) {
    this.#file = file;
    this.#plan = plan;
    this.#vocabulary = vocabulary;
    this.#columns = columns;
    this.#number = columns.files.length - 1;
    this.#reader = new RowReader(plan, vocabulary, columns);
    this.#needed = plan.heads.findLastIndex((head) => head.trim() !== '') + 1;
    this.#recordsToSkip = plan.headRecords;
  }

  async read(context: CellContext): Promise<FileRead> {
    const records = new RecordReader(this.#plan.dialect);
    const before = this.#columns.rows;
    for await (const { text, bytes } of readText(this.#file.open(), this.#plan.encoding)) {
      this.#batch(records.push(text));
      this.#columns.expect(before, bytes, this.#file.size);
      context.progress(this.#file.size > 0 ? Math.min(1, bytes / this.#file.size) : 1, this.#plan.file);
      await context.pause();
    }
    this.#batch(records.push('', true));
    return {
      plan: this.#plan,
      reader: this.#reader,
      setAside: this.#setAside,
      lines: this.#lines,
      coDashes: this.#coDashes,
    };
  }

  #batch(batch: RecordBatch): void {
    const { rows, faults } = batch;
    for (let i = 0; i < rows.length; i++) {
      if (this.#recordsToSkip > 0) {
        this.#recordsToSkip--;
        this.#lines[i < this.#plan.headRecords - 1 ? 'preamble' : 'head']++;
        continue;
      }
      const fault = faults.size > 0 ? faults.get(i) : undefined;
      if (fault !== undefined) {
        this.#lines.reading++;
        this.#putAside(rows[i], batch.lineOf(i), fault === 'open quote' ? say.openQuote() : say.longLine());
      } else this.#record(rows[i], batch, i);
    }
  }

  #record(record: readonly string[], batch: RecordBatch, i: number): void {
    if (record.length !== this.#plan.heads.length) {
      const reason = this.#wrongLength(record);
      if (reason !== '') {
        this.#refuse(record, batch.lineOf(i), [reason]);
        return;
      }
    }
    const { groups } = this.#reader;
    const columns = this.#columns;
    const reasons: string[] = [];
    let read = 0;
    for (const group of groups) {
      if (groups.length > 1 && !this.#reader.mentions(record, group)) continue;
      const row = columns.rows;
      const reason = this.#reader.read(record, group, row);
      if (reason === '') {
        columns.lines.set(row, batch.lineOf(i), 0, columns.capacity(row));
        columns.rows++;
        read++;
      } else {
        columns.clear(row);
        reasons.push(reason);
      }
    }
    if (read > 0) {
      this.#lines.reading++;
      this.#noteDashes(record, batch.lineOf(i));
      for (const reason of reasons) this.#putAside(record, batch.lineOf(i), reason);
    } else this.#refuse(record, batch.lineOf(i), reasons.length > 0 ? reasons : [say.noMeasurement()]);
  }

  /** A line without an accepted reading: something else than a reading, or one (of a wide line several) set aside. */
  #refuse(record: readonly string[], line: number, reasons: readonly string[]): void {
    const kind = classifyLine(record, this.#plan, this.#vocabulary);
    this.#lines[kind]++;
    if (kind === 'preamble')
      for (const { field, value } of preambleConstants([record], this.#vocabulary))
        this.#reader.setConstant(field, value);
    if (kind === 'reading') for (const reason of reasons) this.#putAside(record, line, reason);
  }

  #putAside(record: readonly string[], line: number, reason: string): void {
    this.#setAside.push({ file: this.#number, line, reason, highCo: this.#highCo(record) });
  }

  #wrongLength(record: readonly string[]): string {
    if (record.length < this.#needed) return say.fewFields(record.length, this.#needed);
    for (let i = this.#plan.heads.length; i < record.length; i++)
      if (record[i].trim() !== '') return say.manyFields(record.length, this.#needed);
    return '';
  }

  #highCo(record: readonly string[]): string {
    for (const { field, index, unit } of this.#plan.columns) {
      if (field !== 'co_ppm' && field !== 'co_air_free_ppm') continue;
      const reader = new NumberReader(this.#plan.decimal, unit);
      const text = record[index] ?? '';
      const value = reader.read(text);
      if (reader.status === READ.overRange || (reader.status === READ.number && value >= HIGH_CO_PPM))
        return text.trim();
    }
    return '';
  }

  #noteDashes(record: readonly string[], line: number): void {
    for (const { field, index } of this.#plan.columns)
      if ((field === 'co_ppm' || field === 'co_air_free_ppm') && record[index]?.charCodeAt(0) === 45)
        if (/^-{2,}$/.test(record[index].trim())) this.#coDashes.push(line);
  }
}
