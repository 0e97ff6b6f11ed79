import type { RecordBatch } from './record-reader.ts';

/** A file of one name and value on each line, a block of lines for each record. */
export interface BlockDialect {
  /** What stands between a name and its value; 'spaces' for two or more. */
  readonly separator: ':' | '=' | ';' | '\t' | '|' | ',' | 'spaces';
  readonly newline: '\n' | '\r';
  /** Whether a blank line ends a block; if not, only a name that the block already has does. */
  readonly blankEnds: boolean;
}

export interface Block {
  /** Physical line on which it begins. */
  readonly line: number;
  readonly values: ReadonlyMap<string, string>;
}

/** Splits one line; undefined where it holds no name and value. */
export function nameAndValue(line: string, separator: BlockDialect['separator']): [string, string] | undefined {
  const text = line.trim();
  const match = separator === 'spaces' ? /\s{2,}/.exec(text) : undefined;
  const at = separator === 'spaces' ? (match?.index ?? -1) : text.indexOf(separator);
  if (at <= 0 || at > 80) return undefined;
  const rest = text.slice(at + (match ? match[0].length : 1));
  // A third part is the unit of the second; behind a colon a spreadsheet puts its own mark as well.
  const mark = separator === ':' || separator === '=' ? /^\s*([,;\t|])/.exec(rest)?.[1] : separator;
  const parts = mark === undefined || mark === 'spaces' ? [rest] : rest.split(mark);
  const value = parts
    .map(unquoted)
    .filter((part) => part !== '')
    .join(' ');
  return [unquoted(text.slice(0, at)), value];
}

const unquoted = (text: string): string =>
  text
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();

/** Collects lines into blocks. */
export class BlockSplitter {
  readonly #dialect: BlockDialect;
  #values = new Map<string, string>();
  #first = 0;
  #line = 0;
  #rest = '';

  constructor(dialect: BlockDialect) {
    this.#dialect = dialect;
  }

  push(piece: string, last = false): Block[] {
    const lines = (this.#rest + piece).split(this.#dialect.newline);
    this.#rest = last ? '' : (lines.pop() ?? '');
    const blocks: Block[] = [];
    for (const line of lines) this.#take(line, blocks);
    if (last) this.#end(blocks);
    return blocks;
  }

  #take(line: string, blocks: Block[]): void {
    this.#line++;
    if (line.trim() === '' || /^\s*[-=*_#]{3,}\s*$/.test(line)) {
      if (this.#dialect.blankEnds) this.#end(blocks);
      return;
    }
    const pair = nameAndValue(line, this.#dialect.separator);
    if (!pair) return;
    const [name, value] = pair;
    if (this.#values.has(name)) this.#end(blocks);
    if (this.#values.size === 0) this.#first = this.#line;
    this.#values.set(name, value);
  }

  #end(blocks: Block[]): void {
    if (this.#values.size > 0) blocks.push({ line: this.#first, values: this.#values });
    this.#values = new Map();
  }
}

/** Blocks as records of a table whose heads are the names. Blocks without any of the heads' values are left out. */
export class BlockReader {
  readonly #splitter: BlockSplitter;
  readonly #heads: readonly string[];

  constructor(dialect: BlockDialect, heads: readonly string[]) {
    this.#splitter = new BlockSplitter(dialect);
    this.#heads = heads;
  }

  push(piece: string, last = false): RecordBatch {
    const blocks = this.#splitter.push(piece, last);
    return {
      rows: blocks.map(({ values }) => this.#heads.map((head) => values.get(head) ?? '')),
      lineOf: (row) => blocks[row].line,
      writeLines: (lines, at, row, count) => {
        for (let i = 0; i < count; i++) lines[at + i] = blocks[row + i].line;
      },
      faults: new Map(),
    };
  }
}
