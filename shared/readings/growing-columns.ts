import { NOT_UNDERSTOOD } from './word-meaning.ts';

/**
 * Columns that grow while files are read. All are made long enough before a batch of rows is written, from an estimate
 * by the caller, since first touch of new memory costs more than the parsing does; a column of which nothing is read
 * takes none. Unknown is NaN in numbers, -1 in texts.
 */
export class GrowingNumbers {
  values = new Float64Array(0);
  bounds: Int8Array | undefined;

  /** Makes room for `rows` rows; `capacity` is what to take if there is none. */
  ensure(rows: number, capacity: number): void {
    const { length } = this.values;
    if (rows <= length) return;
    const grown = new Float64Array(Math.max(rows, capacity));
    grown.set(this.values);
    grown.fill(Number.NaN, length);
    this.values = grown;
    if (this.bounds) this.#growBounds(this.bounds);
  }

  /** Marks a row that `ensure` has made room for. */
  setBound(row: number, bound: number): void {
    if (this.bounds === undefined) {
      if (bound === 0) return;
      this.bounds = this.#growBounds(new Int8Array(0));
    }
    this.bounds[row] = bound;
  }

  get(row: number): number {
    return row < this.values.length ? this.values[row] : Number.NaN;
  }

  boundAt(row: number): number {
    return this.bounds === undefined ? 0 : (this.bounds[row] ?? 0);
  }

  #growBounds(bounds: Int8Array): Int8Array {
    const grown = new Int8Array(this.values.length);
    grown.set(bounds);
    this.bounds = grown;
    return grown;
  }
}

/** Texts as codes into levels. */
export class GrowingTexts {
  codes = new Int32Array(0);
  readonly levels: string[] = [];
  /** Codes of words that were not understood. */
  readonly strange = new Set<number>();
  /** Canonical text -> code. */
  readonly #known = new Map<string, number>();
  /** Text as written -> code: what it means is worked out once. */
  readonly #written = new Map<string, number>();
  /** Texts seen lately, by a cheap hash: most cells repeat one of a few. */
  readonly #lately: string[] = new Array<string>(CACHE).fill('\u0000');
  readonly #latelyCodes = new Int32Array(CACHE).fill(-1);
  #lastText = '\u0000';
  #lastCode = -1;
  #meaning: (written: string) => string;

  /** `meaning` turns a text as written into the one that is kept; '' is unknown. */
  constructor(meaning: (written: string) => string) {
    this.#meaning = meaning;
  }

  /** Another file, other words: what was worked out so far is forgotten, what was kept stays. */
  set meaning(meaning: (written: string) => string) {
    this.#meaning = meaning;
    this.#written.clear();
    this.#lately.fill('\u0000');
    this.#lastText = '\u0000';
  }

  /** Makes room for `rows` rows; `capacity` is what to take if there is none. */
  ensure(rows: number, capacity: number): void {
    const { length } = this.codes;
    if (rows <= length) return;
    const grown = new Int32Array(Math.max(rows, capacity));
    grown.set(this.codes);
    grown.fill(-1, length);
    this.codes = grown;
  }

  /** Code of a text as written. */
  codeOf(written: string): number {
    const { length } = written;
    if (length === 0) return -1;
    // Readings of one visit stand together.
    if (written === this.#lastText) return this.#lastCode;
    const code = this.#find(written, length);
    this.#lastText = written;
    this.#lastCode = code;
    return code;
  }

  #find(written: string, length: number): number {
    const slot = (length * 37 + written.charCodeAt(length - 1) * 5 + written.charCodeAt(length >> 1)) & (CACHE - 1);
    if (this.#lately[slot] === written) return this.#latelyCodes[slot];
    let code = this.#written.get(written);
    if (code === undefined) {
      // A slice of a piece of the file keeps the whole piece alive: levels get strings of their own.
      const own = ownString(written);
      code = this.codeOfCanonical(this.#meaning(own));
      this.#written.set(own, code);
      this.#lately[slot] = own;
    } else this.#lately[slot] = code >= 0 && this.levels[code] === written ? this.levels[code] : ownString(written);
    this.#latelyCodes[slot] = code;
    return code;
  }

  codeOfCanonical(text: string): number {
    if (text === '') return -1;
    let code = this.#known.get(text);
    if (code === undefined) {
      code = this.levels.length;
      this.levels.push(text);
      this.#known.set(text, code);
      if (text.startsWith(NOT_UNDERSTOOD)) this.strange.add(code);
    }
    return code;
  }

  code(row: number): number {
    return row < this.codes.length ? this.codes[row] : -1;
  }

  text(row: number): string {
    const code = this.code(row);
    return code < 0 ? '' : this.levels[code];
  }

  /** Gives every row before `rows` the text that its present one becomes. */
  rename(rows: number, become: (text: string) => string): void {
    const codes = [...this.levels].map((text) => this.codeOfCanonical(become(text)));
    const end = Math.min(rows, this.codes.length);
    for (let row = 0; row < end; row++) if (this.codes[row] >= 0) this.codes[row] = codes[this.codes[row]];
  }
}

const CACHE = 256;

function ownString(text: string): string {
  return text.length < 13 ? text : JSON.parse(JSON.stringify(text));
}
