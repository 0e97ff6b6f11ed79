import type { CellContext, SourceFile } from '../cell.ts';
import { BlockReader } from '../csv/block-reader.ts';
import { eightBit } from '../csv/encoding.ts';
import { readText, WrongEncoding } from '../csv/read-text.ts';
import { type RecordBatch, type RecordFault, RecordReader } from '../csv/record-reader.ts';
import * as say from '../messages/import.ts';
import { classifyLine, headKind, type LineKind } from './classify-line.ts';
import { HIGH_CO_PPM } from './high-co.ts';
import type { FilePlan } from './mapping.ts';
import { ABOVE, preambleConstants } from './preamble.ts';
import { NumberReader, READ } from './read-number.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { RowReader } from './row-reader.ts';
import type { Vocabulary } from './vocabulary.ts';
import { padded, wrongLength } from './wrong-length.ts';

/** A proposed reading that is not accepted. */
export interface SetAside {
  readonly file: number;
  readonly line: number;
  readonly reason: string;
  /** Whether its text ends with its line whatever quotes are open on it. */
  readonly oneLine?: boolean;
  /** Its CO as written, where that is high: such a row is listed first. */
  readonly highCo: string;
}

/** What one file held, beside the rows that went into the columns. */
export interface FileRead {
  /** Whether as many bytes came as the file had when it was opened; else it changed meanwhile. */
  readonly whole: boolean;
  readonly plan: FilePlan;
  readonly reader: RowReader;
  readonly setAside: readonly SetAside[];
  /** Lines by what they are; those of readings are counted as records. */
  readonly lines: Readonly<Record<LineKind, number>>;
  /** Lines on which CO is dashes beside other values. */
  readonly coDashes: readonly number[];
}

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
  /** Head lines below the first, in file order. */
  readonly #heads: { readonly line: number; readonly own: boolean }[] = [];
  readonly #lines: Record<LineKind, number> = { blank: 0, head: 0, preamble: 0, summary: 0, footer: 0, reading: 0 };
  readonly #number: number;
  /** Whether lines between the rows can say what holds for the rows after them. */
  readonly #told: boolean;
  #recordsToSkip: number;
  /** What comes now is a last line that no line end closes. */
  #ended = false;

  constructor(file: SourceFile, plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns) {
    this.#file = file;
    this.#plan = plan;
    this.#vocabulary = vocabulary;
    this.#columns = columns;
    this.#number = columns.files.length - 1;
    this.#reader = new RowReader(plan, vocabulary, columns);
    this.#recordsToSkip = plan.headRecords;
    this.#told = plan.constants.some(({ reason }) => reason.endsWith(ABOVE));
  }

  async read(context: CellContext): Promise<FileRead> {
    const { blocks, dialect, heads } = this.#plan;
    const records = blocks ? new BlockReader(blocks, heads) : new RecordReader(dialect);
    const before = this.#columns.rows;
    let read = 0;
    for await (const { text, bytes } of readText(this.#file.open(), this.#plan.encoding)) {
      read = bytes;
      const batch = records.push(text);
      this.#columns.expect(batch.rows.length, bytes, this.#file.size);
      this.#batch(batch);
      context.progress(this.#file.size > 0 ? Math.min(1, bytes / this.#file.size) : 1, this.#plan.file);
      await context.pause();
    }
    this.#ended = true;
    this.#batch(records.push('', true));
    this.#refuseOthers(before);
    return {
      whole: read === this.#file.size,
      plan: this.#plan,
      reader: this.#reader,
      setAside: this.#setAside,
      lines: this.#lines,
      coDashes: this.#coDashes,
    };
  }

  /** Sorts out what is no record of the table; the others are read together, or one by one where lines between can change them. */
  #batch(batch: RecordBatch): void {
    const { faults } = batch;
    const width = this.#plan.heads.length;
    const rows = batch.rows.some((row) => row.length < width) ? this.#padded(batch) : batch.rows;
    let from = 0;
    const readUpTo = (to: number): void => {
      if (to > from) this.#records(from === 0 && to === rows.length ? rows : rows.slice(from, to), batch, from);
      from = to + 1;
    };
    for (let i = 0; i < rows.length; i++) {
      const skip = this.#recordsToSkip > 0;
      const fault = faults.size > 0 ? faults.get(i) : undefined;
      const reason = skip
        ? ''
        : fault
          ? faultReason(fault)
          : rows[i].length === width
            ? ''
            : this.#plan.rowsMayEnd && this.#isCutOff(rows[i])
              ? say.fewFields(rows[i].length, width)
              : wrongLength(rows[i], this.#plan);
      if (!skip && reason === '' && !this.#told) continue;
      if (!skip && reason === '') {
        readUpTo(i + 1);
        from = i + 1;
        continue;
      }
      readUpTo(i);
      if (skip) {
        this.#recordsToSkip--;
        this.#lines[this.#recordsToSkip > 0 ? 'preamble' : 'head']++;
      } else if (fault) {
        this.#lines.reading++;
        this.#putAside(rows[i], batch.lineOf(i), reason, true);
      } else this.#refuse(rows[i], batch.lineOf(i), [reason]);
    }
    readUpTo(rows.length);
  }

  /** Rows that may be shorter than the head line, at its length. */
  #padded({ rows, faults }: RecordBatch): RecordBatch['rows'] {
    return rows.map((row, i) =>
      row.length < this.#plan.heads.length &&
      !faults.has(i) &&
      !this.#isCutOff(row) &&
      wrongLength(row, this.#plan) === ''
        ? padded(row, this.#plan)
        : row,
    );
  }

  /** A number at the very end of a file may have lost its last digits. */
  #isCutOff(row: readonly string[]): boolean {
    const last = this.#plan.columns[row.length - 1]?.field ?? '';
    return this.#ended && this.#vocabulary.fields.get(last)?.kind === 'number';
  }

  /** Records of the right length, from place `from` of the batch on. */
  #records(records: readonly (readonly string[])[], batch: RecordBatch, from: number): void {
    const { groups } = this.#reader;
    if (groups.length > 1) {
      this.#wide(records, batch, from);
      return;
    }
    const columns = this.#columns;
    const base = columns.rows;
    const refused = this.#reader.read(records, groups[0], base);
    batch.writeLines(columns.lines, base, from, records.length);
    columns.rows += records.length;
    this.#lines.reading += records.length - refused.size;
    for (const [i, reason] of refused) {
      columns.status[base + i] = ROW.skipped;
      this.#refuse(records[i], batch.lineOf(from + i), [reason]);
    }
    this.#noteDashes(records, batch, from, refused);
  }

  /** Several readings on a line: each group of columns that holds anything is one. */
  #wide(records: readonly (readonly string[])[], batch: RecordBatch, from: number): void {
    const columns = this.#columns;
    const reasons = records.map((): string[] => []);
    const accepted = new Uint8Array(records.length);
    for (const group of this.#reader.groups) {
      const filled = records.flatMap((record, i) =>
        group.measured.some((index) => record[index].trim() !== '') ? i : [],
      );
      const base = columns.rows;
      const refused = this.#reader.read(
        filled.map((i) => records[i]),
        group,
        base,
      );
      columns.rows += filled.length;
      filled.forEach((i, place) => {
        columns.lines[base + place] = batch.lineOf(from + i);
        const reason = refused.get(place);
        if (reason === undefined) accepted[i] = 1;
        else {
          columns.status[base + place] = ROW.skipped;
          reasons[i].push(reason);
        }
      });
    }
    records.forEach((record, i) => {
      const line = batch.lineOf(from + i);
      if (accepted[i] === 0) this.#refuse(record, line, reasons[i].length > 0 ? reasons[i] : [say.noMeasurement()]);
      else {
        this.#lines.reading++;
        for (const reason of reasons[i]) this.#putAside(record, line, reason);
      }
    });
  }

  /** A line without an accepted reading: something else than a reading, or one (of a wide line several) set aside. */
  #refuse(record: readonly string[], line: number, reasons: readonly string[]): void {
    const kind = classifyLine(record, this.#plan, this.#vocabulary);
    this.#lines[kind]++;
    if (kind === 'head' && !this.#plan.blocks) this.#noteHead(record, line);
    if (kind === 'preamble')
      for (const { field, value } of preambleConstants([record], this.#vocabulary))
        this.#reader.setConstant(field, value);
    if (kind === 'reading') for (const reason of reasons) this.#putAside(record, line, reason);
  }

  #noteHead(record: readonly string[], line: number): void {
    const head = headKind(record, this.#plan, this.#vocabulary);
    if (head === 'own' || head === 'other') this.#heads.push({ line, own: head === 'own' });
  }

  /** Rows under the head line of another table were read by the wrong heads: none of them is accepted. */
  #refuseOthers(from: number): void {
    const columns = this.#columns;
    this.#heads.forEach(({ line: head, own }, i) => {
      if (own) return;
      const next = this.#heads[i + 1]?.line ?? Number.POSITIVE_INFINITY;
      for (let row = from; row < columns.rows; row++) {
        const line = columns.lines[row];
        if (line <= head || line >= next || columns.status[row] !== ROW.accepted) continue;
        columns.status[row] = ROW.setAside;
        this.#setAside.push({ file: this.#number, line, reason: say.underOtherHead(head), highCo: '' });
      }
    });
  }

  #putAside(record: readonly string[], line: number, reason: string, oneLine = false): void {
    this.#setAside.push({ file: this.#number, line, reason, oneLine, highCo: this.#highCo(record) });
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

  #noteDashes(
    records: readonly (readonly string[])[],
    batch: RecordBatch,
    from: number,
    refused: ReadonlyMap<number, string>,
  ): void {
    for (const { field, index } of this.#plan.columns) {
      if (field !== 'co_ppm' && field !== 'co_air_free_ppm') continue;
      for (let i = 0; i < records.length; i++)
        if (records[i][index].charCodeAt(0) === 45 && /^-{2,}\s*$/.test(records[i][index]) && !refused.has(i))
          this.#coDashes.push(batch.lineOf(from + i));
    }
  }
}

const faultReason = (fault: RecordFault): string => (fault === 'open quote' ? say.openQuote() : say.longLine());
