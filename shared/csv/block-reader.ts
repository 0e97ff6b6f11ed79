import type { RecordBatch } from './record-reader.ts';

/** A file of one name and value on each line, a block of lines for each record. */
export interface BlockDialect {
  /** What stands between a name and its value; 'spaces' for two or more. */
  readonly separator: ':' | '=' | ';' | '\t' | '|' | ',' | 'spaces';
  readonly newline: '\n' | '\r';
  /** Whether a blank line ends a block; if not, only a name that the block already has does. */
  readonly blankEnds: boolean;
  /** Lines without name and value that say something of the block below them, and what, as names and values. */
  readonly titles: ReadonlyMap<string, readonly BlockTitle[]>;
  /** Names that only a block of results has. */
  readonly measured: ReadonlySet<string>;
  /** Names that stand above the results of a block; one below them begins the next block. */
  readonly leads: ReadonlySet<string>;
  /** Names of a head that holds for all blocks of results below it, until the next head; empty where each has its own. */
  readonly carried: ReadonlySet<string>;
}

export interface BlockTitle {
  readonly name: string;
  readonly value: string;
  /** Whether it holds for all blocks below it, until there is another one. */
  readonly holds: boolean;
}

export interface Block {
  /** Physical line on which it begins. */
  readonly line: number;
  readonly values: ReadonlyMap<string, string>;
}

/** A blank line, or one of dashes and the like. */
export const isRule = (line: string): boolean => line.trim() === '' || /^\s*[-=*_#]{3,}\s*$/.test(line);

/** Splits one line; undefined where it holds no name and value. */
export function nameAndValue(line: string, separator: BlockDialect['separator']): [string, string] | undefined {
  const text = line.trim();
  const match = separator === 'spaces' ? /\s{2,}/.exec(text) : undefined;
  const at = separator === 'spaces' ? (match?.index ?? -1) : text.indexOf(separator);
  if (at < 0) return acrossGap(text);
  if (at === 0 || at > 80) return undefined;
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

const GAP =
  /^(\S.{0,79}?)(?:\s{2,}|\s*(?:\.{3,}|…+|_{3,})\s*)([<>~+-]?\s*[\d.,]*\d.*|over\b.*|ofl\b.*|\*{3,}.*|-{2,}.*)$/i;

/** One blank is a gap where a number with a unit of these readings stands behind it. */
const WITH_UNIT =
  /^(\p{L}[^:=]{0,79}?)\s([<>~+-]?\d[\d.,]*\s?(?:%|ppm|°\s?[CF]|[hkm]?Pa|mbar|in\.?\s?w\.?c\.?|mm\s?w\.?c\.?))$/iu;

/** "O2 ........ 5.1 %", "CO    >4000 ppm": among lines with a mark, some that have a gap or leaders before a number instead. */
function acrossGap(text: string): [string, string] | undefined {
  const [, name, value] = GAP.exec(text) ?? WITH_UNIT.exec(text) ?? [];
  return name === undefined || value === undefined ? undefined : [unquoted(name), value.trim()];
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
  #titles = new TitlesAbove();
  /** The last head whose names are carried on, and whether any block has come below it. */
  #head: Block | undefined;
  #headUsed = true;
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
    if (last) {
      this.#end(blocks);
      this.#leaveHead(blocks);
    }
    return blocks;
  }

  #take(line: string, blocks: Block[]): void {
    this.#line++;
    if (isRule(line)) {
      if (this.#dialect.blankEnds) this.#end(blocks);
      return;
    }
    const title = this.#dialect.titles.get(line.trim());
    if (title) {
      if (this.#isMeasured()) this.#end(blocks);
      this.#titles.take(title, this.#line);
      return;
    }
    const pair = nameAndValue(line, this.#dialect.separator);
    if (!pair) return;
    const [name, value] = pair;
    if (this.#values.has(name) || (this.#dialect.leads.has(name) && this.#isMeasured())) this.#end(blocks);
    if (this.#dialect.leads.has(name)) this.#titles.endOfHead();
    if (this.#values.size === 0) this.#first = this.#titles.lineAbove(this.#line);
    this.#values.set(name, value);
  }

  #end(blocks: Block[]): void {
    const block = { line: this.#first, values: this.#values };
    this.#values = new Map();
    if (block.values.size === 0) return;
    const isMeasured = this.#hasMeasured(block);
    const own = [...block.values].filter(([name]) => this.#dialect.carried.has(name));
    if (own.length > 0) {
      this.#leaveHead(blocks);
      this.#head = { line: block.line, values: new Map(own) };
      this.#headUsed = isMeasured;
      if (!isMeasured) return;
    } else if (this.#head && isMeasured) {
      for (const [name, value] of this.#head.values) block.values.set(name, value);
      this.#headUsed = true;
    }
    if (isMeasured) {
      for (const [name, value] of this.#titles.use()) block.values.set(name, value);
      if (this.#dialect.carried.size === 0) this.#titles.endOfHead();
    }
    blocks.push(block);
  }

  /** A head under which no results stand is a block of its own, so that it is not lost. */
  #leaveHead(blocks: Block[]): void {
    if (this.#head && !this.#headUsed) blocks.push(this.#head);
    this.#head = undefined;
    this.#headUsed = true;
  }

  #isMeasured(): boolean {
    return this.#hasMeasured({ values: this.#values });
  }

  #hasMeasured({ values }: Pick<Block, 'values'>): boolean {
    for (const name of this.#dialect.measured) if (values.has(name)) return true;
    return false;
  }
}

/** What the titles above the next block say. */
class TitlesAbove {
  readonly #held = new Map<string, string>();
  readonly #said = new Map<string, string>();
  /** How many lines said it since it began. */
  #lines = 0;
  #isUsed = false;
  #line = 0;

  take(titles: readonly BlockTitle[], line: number): void {
    if (this.#isUsed) this.#beginAnew(titles);
    this.#isUsed = false;
    for (const { name, value, holds } of titles) (holds ? this.#held : this.#said).set(name, value);
    this.#lines++;
    this.#line = line;
  }

  /** Where titles stand one below the other, the upper one holds on until there is another of its kind. */
  #beginAnew(titles: readonly BlockTitle[]): void {
    const names = [...this.#said.keys()];
    const from =
      this.#lines > 1 && !titles.some(({ holds }) => holds)
        ? Math.max(0, Math.min(...titles.map(({ name }) => names.indexOf(name))))
        : 0;
    for (const name of names.slice(from)) this.#said.delete(name);
    this.#lines = this.#said.size;
  }

  /** Another head: what was said of the blocks above it does not hold. */
  endOfHead(): void {
    if (this.#isUsed) this.#said.clear();
    if (this.#isUsed) this.#lines = 0;
  }

  /** The line on which a block begins: with the title that stands right above its first name. */
  lineAbove(line: number): number {
    return this.#line > 0 && this.#line === line - 1 ? this.#line : line;
  }

  use(): Iterable<readonly [string, string]> {
    const said = this.#isUsed ? [] : this.#said;
    this.#isUsed = true;
    return [...this.#held, ...said];
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
