import type { Field } from './fields.ts';
import { GrowingNumbers, type GrowingTexts } from './growing-columns.ts';

/** What became of a row. */
export const ROW = { accepted: 0, setAside: 1, duplicate: 2, merged: 3 } as const;

/** Told of rows that were merged into another. */
export interface Merged {
  mark(row: number): void;
}

/** A bound whose number the file does not give ("over range"); settled once the whole file is read. */
export const OVER_RANGE_BOUND = 2;

/** The columns of all files together while they are read: one entry a proposed reading, in source order. */
export class ReadingColumns {
  rows = 0;
  /** Rows to expect, as far as is known; columns are made this long at once. */
  expected = 1024;
  readonly numbers = new Map<string, GrowingNumbers>();
  readonly texts = new Map<string, GrowingTexts>();
  /** Dates as read with the month first, where a file leaves the order open; by field. */
  readonly monthFirst = new Map<string, GrowingNumbers>();
  readonly lines = new GrowingNumbers();
  /** First row of each file. */
  readonly fileStarts: number[] = [];
  readonly files: string[] = [];

  constructor(fields: Iterable<Field>) {
    for (const { name, kind } of fields) {
      if (kind === 'number') this.numbers.set(name, new GrowingNumbers());
      if (kind === 'date') {
        this.numbers.set(name, new GrowingNumbers());
        this.monthFirst.set(name, new GrowingNumbers());
      }
    }
  }

  /** Capacity for a column that has to grow to hold `row`. */
  capacity(row: number): number {
    return Math.max(this.expected, Math.ceil(row * 1.5), 1024);
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

  /** Estimates the rows to come from those of the first bytes of a file. */
  expect(rowsBefore: number, bytes: number, size: number): void {
    if (this.expected > this.rows || bytes <= 0) return;
    this.expected = rowsBefore + Math.ceil(((this.rows - rowsBefore) * size * 1.02) / bytes) + 64;
  }

  /** Drops all rows from `row` on. */
  truncate(row: number): void {
    const drop = ({ values, bounds }: GrowingNumbers): void => {
      values.fill(Number.NaN, row);
      bounds?.fill(0, row);
    };
    for (const column of this.numbers.values()) drop(column);
    for (const column of this.monthFirst.values()) drop(column);
    for (const { codes } of this.texts.values()) codes.fill(-1, row);
    this.rows = row;
  }

  /** Forgets what was written at a row that is then not kept. */
  clear(row: number): void {
    for (const column of this.numbers.values()) column.clear(row);
    for (const column of this.monthFirst.values()) column.clear(row);
    for (const column of this.texts.values()) column.clear(row);
  }
}
