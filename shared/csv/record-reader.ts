import Papa from 'papaparse';
import type { Dialect } from './dialect.ts';

/** Records in file order. Fields are as written, without the quotes around them. */
export interface RecordBatch {
  readonly rows: readonly (readonly string[])[];
  /** Physical line on which a record of this batch begins; the first line of the file is 1. */
  lineOf(row: number): number;
  /** The same for `count` records from `row` on, written into `lines` from `at` on. */
  writeLines(lines: Int32Array, at: number, row: number, count: number): void;
  /** Records that could not be read as such; they hold the fields of one physical line. */
  readonly faults: ReadonlyMap<number, RecordFault>;
}

export type RecordFault = 'open quote' | 'long line';

/** No record of readings is longer; what is longer is a quote left open or no table at all. */
const LONGEST = 1 << 20;
/** What fixed columns are parted with before PapaParse reads them: ASCII's unit separator. */
const SEPARATOR = '\x1f';

/**
 * Turns pieces of text into records. PapaParse reads them; this class joins pieces, counts physical lines and keeps a
 * quote that is never closed from swallowing the lines after it: its line becomes a fault, the next lines are read afresh.
 */
export class RecordReader {
  readonly #dialect: Dialect;
  readonly #parser: Papa.Parser;
  #rest = '';
  #line = 1;
  /** Inside a line longer than LONGEST, up to its end. */
  #skipping = false;

  constructor(dialect: Dialect) {
    this.#dialect = dialect;
    const delimiter = dialect.delimiter === 'columns' ? SEPARATOR : dialect.delimiter;
    this.#parser = new Papa.Parser({ delimiter, newline: dialect.newline, quoteChar: '"' });
  }

  /** The records completed by this piece; `last` also completes what stands without a line break at the end. */
  push(piece: string, last = false): RecordBatch {
    let text = this.#rest + (this.#skipping ? this.#afterLongLine(piece) : piece);
    this.#rest = '';
    const batch = new GrowingBatch(this.#line);
    while (text !== '') {
      const read = this.#read(text, last, batch);
      text = text.slice(read);
      if (read === 0 || text === '') break;
    }
    if (text.length > LONGEST && !last) text = this.#cut(text, batch);
    this.#rest = text;
    this.#line = batch.nextLine;
    return batch;
  }

  /** Parses up to the first broken record, or to the end. Returns how many characters are done with. */
  #read(text: string, last: boolean, batch: GrowingBatch): number {
    const { newline, delimiter } = this.#dialect;
    const { data, errors, meta } = this.#parse(text, last);
    const read = delimiter === 'columns' ? text.lastIndexOf(newline) + 1 : meta.cursor;
    const done = last ? text.length : read;
    if (data.length === 0) return last ? text.length : 0;
    // Papa reads one empty field after the last line break of the file.
    if (last && data.at(-1)?.length === 1 && data.at(-1)?.[0] === '') data.pop();
    if (newline === '\n' && text.includes('\r')) dropReturns(data);
    // Without a quote, a record is a line.
    if (!text.includes('"')) {
      batch.add(data, -1);
      return done;
    }
    const lines = countOf(text, newline, done) + (last && !text.endsWith(newline) ? 1 : 0);
    if (lines === data.length) {
      batch.add(data, errors.length > 0 && errors.some(({ code }) => code === 'MissingQuotes') ? data.length - 1 : -1);
      return done;
    }
    return this.#readBroken(text, data, new Set(errors.map(({ row }) => row ?? -1)), batch, done);
  }

  /** As above, where some fields hold line breaks. */
  #readBroken(
    text: string,
    data: readonly string[][],
    wrong: ReadonlySet<number>,
    batch: GrowingBatch,
    done: number,
  ): number {
    const { newline, delimiter } = this.#dialect;
    let from = 0;
    for (let row = 0; row < data.length; row++) {
      const breaks = data[row].reduce((sum, field) => sum + countOf(field, newline, field.length), 0);
      if (breaks > 0 && (wrong.has(row) || swallowsRows(data[row], delimiter, newline))) {
        const end = endOfLine(text, from, newline);
        batch.addFault(text.slice(from, end).split(delimiter), 'open quote');
        return end;
      }
      batch.addSpanning(data[row], breaks + 1);
      for (let i = 0; i <= breaks; i++) from = endOfLine(text, from, newline);
    }
    return done;
  }

  #parse(text: string, last: boolean): Papa.ParseResult<string[]> {
    const { delimiter, newline, starts } = this.#dialect;
    if (delimiter !== 'columns') return this.#parser.parse(text, 0, !last);
    const cut = (line: string): string =>
      starts.map((start, i) => line.slice(start, starts[i + 1]).trim()).join(SEPARATOR);
    return this.#parser.parse(text.split(newline).map(cut).join(newline), 0, !last);
  }

  /** A record that is longer than any can be: one line of it is given up, or the rest of an endless line skipped. */
  #cut(text: string, batch: GrowingBatch): string {
    const { newline, delimiter } = this.#dialect;
    const end = text.indexOf(newline);
    if (end >= 0) {
      batch.addFault(text.slice(0, end).split(delimiter), 'open quote');
      return text.slice(end + 1);
    }
    batch.addFault([text.slice(0, 200)], 'long line');
    this.#skipping = true;
    return '';
  }

  #afterLongLine(piece: string): string {
    const end = piece.indexOf(this.#dialect.newline);
    if (end < 0) return '';
    this.#skipping = false;
    return piece.slice(end + 1);
  }
}

class GrowingBatch implements RecordBatch {
  rows: string[][] = [];
  readonly faults = new Map<number, RecordFault>();
  nextLine: number;
  readonly #first: number;
  /** Line of each row, kept only once a record spans lines. */
  #lines: number[] | undefined;

  constructor(firstLine: number) {
    this.#first = firstLine;
    this.nextLine = firstLine;
  }

  lineOf(row: number): number {
    return this.#lines ? this.#lines[row] : this.#first + row;
  }

  writeLines(lines: Int32Array, at: number, row: number, count: number): void {
    const own = this.#lines;
    const first = this.#first + row;
    for (let i = 0; i < count; i++) lines[at + i] = own ? own[row + i] : first + i;
  }

  /** Records of one line each. */
  add(rows: string[][], open: number): void {
    if (open >= 0) this.faults.set(this.rows.length + open, 'open quote');
    if (this.#lines) for (let i = 0; i < rows.length; i++) this.#lines.push(this.nextLine + i);
    this.nextLine += rows.length;
    this.rows = this.rows.length === 0 ? rows : this.rows.concat(rows);
  }

  addSpanning(row: string[], lines: number): void {
    if (lines > 1) this.#lines ??= this.rows.map((_, i) => this.#first + i);
    this.#lines?.push(this.nextLine);
    this.nextLine += lines;
    this.rows.push(row);
  }

  addFault(row: string[], fault: RecordFault): void {
    this.faults.set(this.rows.length, fault);
    this.addSpanning(row, 1);
  }
}

/** Of a line break CR LF the CR is left on the last field. */
function dropReturns(rows: readonly string[][]): void {
  for (const row of rows) {
    const end = row.length - 1;
    if (row[end].charCodeAt(row[end].length - 1) === 13) row[end] = row[end].slice(0, -1);
  }
}

/** A field in quotes that holds whole lines of the table was never closed where it should have been. */
function swallowsRows(row: readonly string[], delimiter: string, newline: string): boolean {
  return row.some((field) =>
    field
      .split(newline)
      .slice(1)
      .some((line) => countOf(line, delimiter, line.length) >= Math.max(2, row.length / 2)),
  );
}

function countOf(text: string, character: string, end: number): number {
  let count = 0;
  for (let at = text.indexOf(character); at >= 0 && at < end; at = text.indexOf(character, at + 1)) count++;
  return count;
}

function endOfLine(text: string, from: number, newline: string): number {
  const at = text.indexOf(newline, from);
  return at < 0 ? text.length : at + 1;
}
