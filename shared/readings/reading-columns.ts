import type { Field } from './fields.ts';
import { GrowingNumbers, type GrowingTexts } from './growing-columns.ts';

/** What became of a row. A skipped one is no reading, or was merged into another. */
export const ROW = { accepted: 0, setAside: 1, duplicate: 2, skipped: 3 } as const;

/** A bound whose number the file does not give ("over range"); settled once the whole file is read. */
export const OVER_RANGE_BOUND = 2;

/** The columns of all files together while they are read: one entry a proposed reading, in source order. */
export class ReadingColumns {
  rows = 0;
  status = new Uint8Array(0);
  lines = new Int32Array(0);
  readonly numbers = new Map<string, GrowingNumbers>();
  readonly texts = new Map<string, GrowingTexts>();
  /** Dates as read with the month first, where a file leaves the order open; by field. */
  readonly monthFirst = new Map<string, GrowingNumbers>();
  /** The same with the year first, of dates whose year has two digits; NaN for all others. */
  readonly yearFirst = new Map<string, GrowingNumbers>();
  readonly files: string[] = [];
  /** First row of each file. */
  readonly fileStarts: number[] = [];
  /** Rows to expect in all, as far as is known. */
  #expected = 0;

  constructor(fields: Iterable<Field>) {
    for (const { name, kind } of fields) {
      if (kind === 'number' || kind === 'date') this.numbers.set(name, new GrowingNumbers());
      if (kind !== 'date') continue;
      this.monthFirst.set(name, new GrowingNumbers());
      this.yearFirst.set(name, new GrowingNumbers());
    }
  }

  /** Makes room for rows up to `rows` and says how long columns should become. */
  ensure(rows: number): number {
    const capacity = Math.max(this.#expected, Math.ceil(rows * 1.25), 256);
    if (rows > this.status.length) {
      const [status, lines] = [new Uint8Array(capacity), new Int32Array(capacity)];
      status.set(this.status);
      lines.set(this.lines);
      this.status = status;
      this.lines = lines;
    }
    return this.status.length;
  }

  /** Estimates the rows to come from those of the first `bytes` of a file of `size`. */
  expect(rows: number, bytes: number, size: number): void {
    if (this.#expected >= this.rows + rows || bytes <= 0) return;
    const start = this.fileStarts.at(-1) ?? 0;
    this.#expected = start + Math.ceil(((this.rows + rows - start) * size * 1.03) / bytes) + 64;
  }

  startFile(name: string): void {
    this.files.push(name);
    this.fileStarts.push(this.rows);
  }

  /** End of a file's rows. */
  fileEnd(file: number): number {
    return this.fileStarts[file + 1] ?? this.rows;
  }

  fileOf(row: number): number {
    let file = this.fileStarts.length - 1;
    while (file > 0 && this.fileStarts[file] > row) file--;
    return file;
  }

  /** Drops all rows from `row` on. */
  truncate(row: number): void {
    for (const column of [...this.numbers.values(), ...this.monthFirst.values(), ...this.yearFirst.values()]) {
      column.values.fill(Number.NaN, row);
      column.bounds?.fill(0, row);
    }
    for (const { codes } of this.texts.values()) codes.fill(-1, row);
    this.status.fill(0, row);
    this.rows = row;
  }
}
