import type { Encoding } from './encoding.ts';
import { readText } from './read-text.ts';

const LONGEST = 2000;
const MOST_LINES = 60;

/** How far the text of a record goes: its line, lines on to the end of an open quote, or lines on to a blank one. */
export type RecordEnd = 'line' | 'quote' | 'blank';

/**
 * The text of the records that begin on the given physical lines of a file (the first is 1), each of their lines up to
 * 2000 characters. The file is read to its end, so that who hands in the bytes can check all of them.
 */
export async function readLines(
  bytes: AsyncIterable<Uint8Array>,
  encoding: Encoding,
  newline: '\n' | '\r',
  wanted: ReadonlyMap<number, RecordEnd>,
): Promise<Map<number, string>> {
  const collector = new Collector(wanted);
  let rest = '';
  for await (const { text } of readText(bytes, encoding)) {
    let from = 0;
    for (let end = text.indexOf(newline); end >= 0; end = text.indexOf(newline, from)) {
      if (collector.waits) collector.take(rest + text.slice(from, end));
      else collector.line++;
      rest = '';
      from = end + 1;
    }
    if (rest.length <= LONGEST) rest += text.slice(from, from + LONGEST + 1);
  }
  collector.take(rest);
  return collector.texts();
}

interface OpenRecord {
  readonly first: number;
  readonly end: RecordEnd;
  readonly lines: string[];
}

class Collector {
  line = 1;
  readonly #wanted: ReadonlyMap<number, RecordEnd>;
  readonly #found = new Map<number, string>();
  #open: OpenRecord | undefined;

  constructor(wanted: ReadonlyMap<number, RecordEnd>) {
    this.#wanted = wanted;
  }

  /** Whether the text of the line that comes next matters. */
  get waits(): boolean {
    return this.#open !== undefined || this.#wanted.has(this.line);
  }

  take(written: string): void {
    const text = written.slice(0, LONGEST).replace(/\r$/, '');
    const end = this.#wanted.get(this.line);
    if (end !== undefined) {
      this.#close();
      this.#open = { first: this.line, end, lines: [] };
    }
    this.line++;
    const open = this.#open;
    if (!open) return;
    const ends = open.end === 'blank' && text.trim() === '' && open.lines.length > 0;
    if (!ends) open.lines.push(text);
    if (ends || isWhole(open)) this.#close();
  }

  #close(): void {
    const open = this.#open;
    // A quote that is open at the end was never one of several lines.
    if (open) this.#found.set(open.first, isClosed(open) ? open.lines.join('\n') : open.lines[0]);
    this.#open = undefined;
  }

  texts(): Map<number, string> {
    this.#close();
    return this.#found;
  }
}

const isWhole = (record: OpenRecord): boolean =>
  record.end === 'line' || record.lines.length >= MOST_LINES || (record.end === 'quote' && isClosed(record));

function isClosed({ end, lines }: OpenRecord): boolean {
  if (end !== 'quote') return true;
  return lines.reduce((sum, text) => sum + text.split('"').length - 1, 0) % 2 === 0;
}
