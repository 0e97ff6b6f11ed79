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
  /** Texts as written, each with the code of what it means, which is worked out once, and the text that came after it. */
  #texts: string[] = [];
  #textCodes: number[] = [];
  #follower: number[] = [];
  /** Text as written -> place in these lists; and the place of the one found last. */
  readonly #written = new Map<string, number>();
  #place = -1;
  /** Texts seen lately, by a cheap hash: most cells repeat one of a few. */
  readonly #lately: string[] = new Array<string>(CACHE).fill(NO_TEXT);
  readonly #latelyCodes = new Int32Array(CACHE).fill(-1);
  #meaning: (written: string) => string;

  /** `meaning` turns a text as written into the one that is kept; '' is unknown. */
  constructor(meaning: (written: string) => string) {
    this.#meaning = meaning;
  }

  /** Another file, other words: what was worked out so far is forgotten, what was kept stays. */
  set meaning(meaning: (written: string) => string) {
    this.#meaning = meaning;
    this.#written.clear();
    [this.#texts, this.#textCodes, this.#follower, this.#place] = [[], [], [], -1];
    this.#lately.fill(NO_TEXT);
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

  /** Writes the codes of one column of the records [from, to) into `codes` from `base` on. */
  readColumn(records: readonly (readonly string[])[], index: number, from: number, to: number, base: number): void {
    const codes = this.codes;
    const lately = this.#lately;
    const latelyCodes = this.#latelyCodes;
    for (let i = from; i < to; i++) {
      const text = records[i][index];
      const slot = slotOf(text);
      if (slot < 0) codes[base + i] = -1;
      else codes[base + i] = lately[slot] === text ? latelyCodes[slot] : this.#find(text, slot);
    }
  }

  /** Code of a text as written. */
  codeOf(written: string): number {
    const slot = slotOf(written);
    if (slot < 0) return -1;
    return this.#lately[slot] === written ? this.#latelyCodes[slot] : this.#find(written, slot);
  }

  #find(written: string, slot: number): number {
    // Exports come visit by visit, so the next one is often the one that followed last time.
    const next = this.#follower[this.#place];
    let place = next >= 0 && this.#texts[next] === written ? next : (this.#written.get(written) ?? -1);
    if (place < 0) {
      // A slice of a piece of the file keeps the whole piece alive: levels get strings of their own.
      const own = ownString(written);
      place = this.#texts.length;
      this.#texts.push(own);
      this.#textCodes.push(this.codeOfCanonical(this.#meaning(own)));
      this.#follower.push(-1);
      this.#written.set(own, place);
    }
    if (this.#place >= 0) this.#follower[this.#place] = place;
    this.#place = place;
    this.#lately[slot] = this.#texts[place];
    this.#latelyCodes[slot] = this.#textCodes[place];
    return this.#textCodes[place];
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

const CACHE = 1024;
/** In a place of the cache that holds nothing yet. */
const NO_TEXT = '';

/** Place of a text in the cache; -1 for none. Numbered names differ at their end, words in their middle. */
function slotOf(text: string): number {
  const { length } = text;
  if (length === 0) return -1;
  return (length * 37 + text.charCodeAt(length - 1) * 5 + text.charCodeAt(length >> 1) * 131) & (CACHE - 1);
}

function ownString(text: string): string {
  return text.length < 13 ? text : JSON.parse(JSON.stringify(text));
}
