import type { CellContext, SourceFile } from '../cell.ts';
import { BlockReader } from '../csv/block-reader.ts';
import { eightBit } from '../csv/encoding.ts';
import { readText } from '../csv/read-text.ts';
import { type RecordBatch, type RecordFault, RecordReader } from '../csv/record-reader.ts';
import { WrongEncoding } from '../csv/utf8-decoder.ts';
import * as say from '../messages/import.ts';
import { classifyLine, headKind, type LineKind } from './classify-line.ts';
import { CoWatch } from './co-watch.ts';
import type { FileRead, ReaderTold, SetAside } from './file-read.ts';
import type { FilePlan, Section } from './mapping.ts';
import { type HeadLine, planSections } from './plan-sections.ts';
import { ABOVE, preambleConstants } from './preamble.ts';
import type { Profile } from './profile.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { RowReader } from './row-reader.ts';
import { ToldBetween } from './told-between.ts';
import type { Vocabulary } from './vocabulary.ts';
import { highCoWritten } from './written-co.ts';
import { padded, wrongLength } from './wrong-length.ts';

/**
 * Reads one file into the columns, as its plan says. Bytes that turn out not to be UTF-8 make it start over, and so does a
 * head line of another table further down: from there on the columns are mapped anew.
 */
export async function readFile(
  file: SourceFile,
  plan: FilePlan,
  vocabulary: Vocabulary,
  columns: ReadingColumns,
  context: CellContext,
  profiles: readonly Profile[] = [],
): Promise<FileRead> {
  const start = columns.rows;
  const read = async (by: FilePlan): Promise<FileRead> => {
    const reading = new FileReading(file, by, vocabulary, columns);
    const done = await reading.read(context);
    if (reading.heads.every(({ own }) => own)) return done;
    columns.truncate(start);
    const sections = await planSections(file, by, vocabulary, profiles, reading.heads);
    return new FileReading(file, { ...by, sections }, vocabulary, columns).read(context);
  };
  try {
    return await read(plan);
  } catch (error) {
    if (!(error instanceof WrongEncoding)) throw error;
    columns.truncate(start);
    const western = { ...plan, encoding: eightBit(new Uint8Array()).encoding, encodingReason: 'not UTF-8 throughout' };
    return await read(western);
  }
}

class FileReading {
  readonly #file: SourceFile;
  /** The whole file's plan, and that of the part that is being read. */
  readonly #whole: FilePlan;
  #plan: FilePlan;
  readonly #vocabulary: Vocabulary;
  readonly #columns: ReadingColumns;
  readonly #readers = new Map<FilePlan, RowReader>();
  #reader: RowReader;
  readonly #setAside: SetAside[] = [];
  readonly #co = new CoWatch();
  /** Head lines below the first, in file order. */
  readonly heads: HeadLine[] = [];
  readonly #between: ToldBetween;
  /** Sections still to come, and the one that is being read. */
  #ahead: readonly Section[];
  #section: Section | undefined;
  readonly #lines: Record<LineKind, number> = { blank: 0, head: 0, preamble: 0, summary: 0, footer: 0, reading: 0 };
  readonly #number: number;
  /** Whether lines between the rows can say what holds for the rows after them. */
  readonly #told: boolean;
  #recordsToSkip: number;
  /** What comes now is a last line that no line end closes. */
  #ended = false;

  constructor(file: SourceFile, plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns) {
    this.#file = file;
    this.#whole = plan;
    this.#plan = plan;
    this.#ahead = plan.sections ?? [];
    this.#vocabulary = vocabulary;
    this.#columns = columns;
    this.#number = columns.files.length - 1;
    this.#reader = new RowReader(plan, vocabulary, columns);
    this.#readers.set(plan, this.#reader);
    this.#recordsToSkip = plan.headRecords;
    this.#between = new ToldBetween(plan.constants);
    this.#told = plan.constants.some(({ reason }) => reason.endsWith(ABOVE));
  }

  async read(context: CellContext): Promise<FileRead> {
    const { blocks, dialect, heads } = this.#plan;
    const records = blocks ? new BlockReader(blocks, heads) : new RecordReader(dialect);
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
    return {
      whole: read === this.#file.size,
      plan: this.#whole,
      reader: this.#readerTold(),
      setAside: this.#setAside,
      lines: this.#lines,
      coDashes: this.#co.dashes,
      maybeCo: this.#co.maybe,
    };
  }

  #readerTold(): ReaderTold {
    const readers = [...this.#readers.values()];
    const open = readers.map(({ openFrom }) => openFrom).filter((row) => row >= 0);
    return {
      dates: this.#reader.dates,
      openFrom: open.length > 0 ? Math.min(...open) : -1,
      otherMarks: new Map(readers.flatMap(({ otherMarks }) => [...otherMarks])),
      words: new Map(readers.flatMap(({ words }) => [...words])),
      unread: new Map(readers.flatMap(({ unread }) => [...unread])),
    };
  }

  #batch(batch: RecordBatch): void {
    let from = 0;
    for (let [next] = this.#ahead; next; [next] = this.#ahead) {
      let to = from;
      while (to < batch.rows.length && batch.lineOf(to) < next.line) to++;
      this.#span(batch, from, to);
      if (to === batch.rows.length) return;
      this.#enter(next);
      from = to;
    }
    this.#span(batch, from, batch.rows.length);
  }

  /** From here on the columns are those of another head line. */
  #enter(section: Section): void {
    this.#ahead = this.#ahead.slice(1);
    this.#section = section;
    this.#plan = section.plan ?? this.#whole;
    const { dates } = this.#reader;
    const known = this.#readers.get(this.#plan);
    this.#reader = known ?? new RowReader(this.#plan, this.#vocabulary, this.#columns, dates);
    this.#readers.set(this.#plan, this.#reader);
    for (const [field, value] of this.#between.all) this.#reader.setConstant(field, value);
    this.#recordsToSkip = section.headLines;
  }

  /** Sorts out what is no record of the table; the others are read together, or one by one where lines between can change them. */
  #span(batch: RecordBatch, start: number, end: number): void {
    const { faults } = batch;
    const width = this.#plan.heads.length;
    const rows = batch.rows.some((row) => row.length < width) ? this.#padded(batch) : batch.rows;
    let from = start;
    const readUpTo = (to: number): void => {
      if (to > from) this.#records(from === 0 && to === rows.length ? rows : rows.slice(from, to), batch, from);
      from = to + 1;
    };
    for (let i = start; i < end; i++) {
      const skip = this.#recordsToSkip > 0;
      const fault = faults.size > 0 ? faults.get(i) : undefined;
      const reason = skip
        ? ''
        : fault
          ? faultReason(fault)
          : this.#section && !this.#section.plan
            ? say.underOtherHead(this.#section.line)
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
        this.#lines[this.#recordsToSkip > 0 && !this.#section ? 'preamble' : 'head']++;
      } else if (fault) {
        this.#lines.reading++;
        this.#putAside(rows[i], batch.lineOf(i), reason, true);
      } else this.#refuse(rows[i], batch.lineOf(i), [reason]);
    }
    readUpTo(end);
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
    if (records.length > refused.size) this.#between.reading();
    this.#lines.reading += records.length - refused.size;
    for (const [i, reason] of refused) {
      columns.status[base + i] = ROW.skipped;
      this.#refuse(records[i], batch.lineOf(from + i), [reason]);
    }
    this.#co.look(records, this.#plan, batch, from, refused);
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
    this.#co.look(records, this.#plan, batch, from, { has: (i) => accepted[i] === 0 });
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
      for (const { field, value } of this.#between.take(
        preambleConstants([record], this.#vocabulary, this.#plan.columns),
      ))
        this.#reader.setConstant(field, value);
    if (kind === 'reading') for (const reason of reasons) this.#putAside(record, line, reason);
  }

  #noteHead(record: readonly string[], line: number): void {
    const head = headKind(record, this.#whole, this.#vocabulary);
    if (head === 'own' || head === 'other') this.heads.push({ line, own: head === 'own' });
  }

  #putAside(record: readonly string[], line: number, reason: string, oneLine = false): void {
    const highCo = highCoWritten(record, this.#section?.columns ?? this.#plan);
    this.#setAside.push({ file: this.#number, line, reason, oneLine, highCo });
  }
}

const faultReason = (fault: RecordFault): string => (fault === 'open quote' ? say.openQuote() : say.longLine());
