/**
 * Columns that grow while files are read. Capacity grows by half, from an estimate by the caller, since first touch of
 * new memory costs more than the parsing does; a column of which nothing was read takes none.
 */
export class GrowingNumbers {
  values = new Float64Array(0);
  bounds: Int8Array | undefined;

  set(row: number, value: number, bound: number, capacity: number): void {
    if (row >= this.values.length) this.#grow(row, capacity);
    this.values[row] = value;
    if (bound !== 0) {
      if (this.bounds === undefined || row >= this.bounds.length) this.#growBounds();
      (this.bounds as Int8Array)[row] = bound;
    } else if (this.bounds !== undefined && row < this.bounds.length) this.bounds[row] = 0;
  }

  get(row: number): number {
    return row < this.values.length ? this.values[row] : Number.NaN;
  }

  boundAt(row: number): number {
    return this.bounds !== undefined && row < this.bounds.length ? this.bounds[row] : 0;
  }

  clear(row: number): void {
    if (row < this.values.length) this.values[row] = Number.NaN;
    if (this.bounds !== undefined && row < this.bounds.length) this.bounds[row] = 0;
  }

  #grow(row: number, capacity: number): void {
    const length = Math.max(capacity, row + 1);
    const grown = new Float64Array(length);
    grown.set(this.values);
    grown.fill(Number.NaN, this.values.length);
    this.values = grown;
  }

  #growBounds(): void {
    const grown = new Int8Array(this.values.length);
    if (this.bounds) grown.set(this.bounds);
    this.bounds = grown;
  }
}

/** Text as codes into levels; -1 where unknown. */
export class GrowingTexts {
  codes = new Int32Array(0);
  readonly levels: string[] = [];
  /** Canonical text -> code. */
  readonly #known = new Map<string, number>();
  /** Text as written -> code: what it means is worked out once. */
  readonly #written = new Map<string, number>();
  #lastText = '';
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
    this.#lastText = '';
    this.#lastCode = -1;
  }

  /** Code of a text as written. */
  codeOf(written: string): number {
    if (written === this.#lastText) return this.#lastCode;
    let code = this.#written.get(written);
    if (code === undefined) {
      // A slice of a chunk keeps the whole chunk alive: levels get strings of their own.
      const own = ownString(written);
      code = this.codeOfCanonical(this.#meaning(own));
      this.#written.set(own, code);
    }
    this.#lastText = written;
    this.#lastCode = code;
    return code;
  }

  codeOfCanonical(text: string): number {
    if (text === '') return -1;
    let code = this.#known.get(text);
    if (code === undefined) {
      code = this.levels.length;
      this.levels.push(text);
      this.#known.set(text, code);
    }
    return code;
  }

  set(row: number, code: number, capacity: number): void {
    if (row >= this.codes.length) {
      const grown = new Int32Array(Math.max(capacity, row + 1));
      grown.set(this.codes);
      grown.fill(-1, this.codes.length);
      this.codes = grown;
    }
    this.codes[row] = code;
  }

  code(row: number): number {
    return row < this.codes.length ? this.codes[row] : -1;
  }

  text(row: number): string {
    const code = this.code(row);
    return code < 0 ? '' : this.levels[code];
  }

  clear(row: number): void {
    if (row < this.codes.length) this.codes[row] = -1;
  }

  /** Gives every row before `rows` the text that its present one becomes. */
  rename(rows: number, become: (text: string) => string): void {
    const codes = [...this.levels].map((text) => this.codeOfCanonical(become(text)));
    const end = Math.min(rows, this.codes.length);
    for (let row = 0; row < end; row++) if (this.codes[row] >= 0) this.codes[row] = codes[this.codes[row]];
  }
}

function ownString(text: string): string {
  return text.length < 13 ? text : JSON.parse(JSON.stringify(text));
}
