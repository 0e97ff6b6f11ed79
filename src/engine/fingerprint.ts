/**
 * Names a plain value by its content: 64 bits from two lanes of MurmurHash3's mixing (A. Appleby, public domain).
 * Equal values of any shape (numbers, texts, arrays, typed arrays, maps, plain objects in any key order) get equal names; a
 * function is only ever equal to itself. Columns and long lists are remembered by reference, so that a table handed on costs nothing.
 */
export function fingerprint(value: unknown): string {
  // A number is its own name; -0 is told from 0, as in the bytes of an array.
  if (typeof value === 'number') return Object.is(value, -0) ? '-0' : String(value);
  const state = new Mixer();
  mix(state, value);
  return state.name();
}

const remembered = new WeakMap<object, string>();

class Mixer {
  #a = 0x2f7a1c35;
  #b = 0x51ed270b;
  #words = 0;

  word(w: number): void {
    let k = Math.imul(w, 0xcc9e2d51);
    k = Math.imul((k << 15) | (k >>> 17), 0x1b873593);
    this.#a ^= k;
    this.#a = (Math.imul((this.#a << 13) | (this.#a >>> 19), 5) + 0xe6546b64) | 0;
    k = Math.imul(w, 0x239b961b);
    k = Math.imul((k << 16) | (k >>> 16), 0xab0e9789);
    this.#b ^= k;
    this.#b = (Math.imul((this.#b << 17) | (this.#b >>> 15), 5) + 0x561ccd1b) | 0;
    this.#words++;
  }

  text(text: string): void {
    this.word(text.length);
    for (let i = 0; i < text.length; i += 2)
      this.word(text.charCodeAt(i) | ((i + 1 < text.length ? text.charCodeAt(i + 1) : 0) << 16));
  }

  words(words: Uint32Array): void {
    let a = this.#a;
    let b = this.#b;
    for (let i = 0; i < words.length; i++) {
      const w = words[i];
      let k = Math.imul(w, 0xcc9e2d51);
      k = Math.imul((k << 15) | (k >>> 17), 0x1b873593);
      a ^= k;
      a = (Math.imul((a << 13) | (a >>> 19), 5) + 0xe6546b64) | 0;
      k = Math.imul(w, 0x239b961b);
      k = Math.imul((k << 16) | (k >>> 16), 0xab0e9789);
      b ^= k;
      b = (Math.imul((b << 17) | (b >>> 15), 5) + 0x561ccd1b) | 0;
    }
    this.#a = a;
    this.#b = b;
    this.#words += words.length;
  }

  name(): string {
    const a = finish(this.#a ^ this.#words ^ this.#b);
    const b = finish(this.#b + a);
    return (a >>> 0).toString(16).padStart(8, '0') + (b >>> 0).toString(16).padStart(8, '0');
  }
}

function finish(h: number): number {
  let x = h;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return x ^ (x >>> 16);
}

const float = new Float64Array(1);
const floatWords = new Uint32Array(float.buffer);
let functions = 0;

const TAG = { null: 1, undefined: 2, true: 3, false: 4, number: 5, text: 6, array: 7, object: 8, bytes: 9, end: 10 };

function mix(state: Mixer, value: unknown): void {
  switch (typeof value) {
    case 'number':
      float[0] = value;
      state.word(TAG.number);
      state.word(floatWords[0]);
      state.word(floatWords[1]);
      return;
    case 'string':
      state.word(TAG.text);
      state.text(value);
      return;
    case 'boolean':
      state.word(value ? TAG.true : TAG.false);
      return;
    case 'object':
      if (value === null) state.word(TAG.null);
      else mixObject(state, value);
      return;
    case 'function':
      state.text(once(value, () => `function ${++functions}`));
      return;
    default:
      state.word(TAG.undefined);
      state.text(String(value));
  }
}

function once(value: object, name: () => string): string {
  const known = remembered.get(value) ?? name();
  remembered.set(value, known);
  return known;
}

/** Lists from this length on are remembered by reference, like columns: values are never altered. */
const LONG = 256;

function nameOfItems(items: readonly unknown[]): string {
  const state = new Mixer();
  for (const item of items) mix(state, item);
  return state.name();
}

function mixObject(state: Mixer, value: object): void {
  if (ArrayBuffer.isView(value)) {
    state.word(TAG.bytes);
    state.text(once(value, () => bytesOf(value)));
  } else if (Array.isArray(value)) {
    state.word(TAG.array);
    state.word(value.length);
    if (value.length > LONG) state.text(once(value, () => nameOfItems(value)));
    else for (const item of value) mix(state, item);
  } else if (value instanceof Map || value instanceof Set) {
    mix(state, [...value]);
  } else {
    const keys = keysOf(value);
    state.word(TAG.object);
    for (const key of keys) {
      const item = (value as Readonly<Record<string, unknown>>)[key];
      if (item === undefined) continue;
      state.word(keyWord(key));
      mix(state, item);
    }
    state.word(TAG.end);
  }
}

/** Names in code-unit order. Thousands of rows of one make bring theirs in the same order, so sorting is the exception. */
function keysOf(value: object): string[] {
  const keys = Object.keys(value);
  for (let at = 1; at < keys.length; at++) if (keys[at - 1] > keys[at]) return sortedKeys(keys);
  return keys;
}

const sorted = new Map<string, string[]>();
const MOST_REMEMBERED = 1000;

function sortedKeys(keys: string[]): string[] {
  const shape = keys.join('\n');
  const known = sorted.get(shape) ?? keys.sort();
  if (sorted.size < MOST_REMEMBERED) sorted.set(shape, known);
  return known;
}

const keyWords = new Map<string, number>();

/** One word for a field's name: 32 bits of its own fingerprint. */
function keyWord(key: string): number {
  const known = keyWords.get(key);
  if (known !== undefined) return known;
  const state = new Mixer();
  state.text(key);
  const word = Number.parseInt(state.name().slice(0, 8), 16) | 0;
  if (keyWords.size < MOST_REMEMBERED) keyWords.set(key, word);
  return word;
}

function bytesOf(view: ArrayBufferView): string {
  const state = new Mixer();
  state.text(view.constructor.name);
  const whole = view.byteLength >>> 2;
  const aligned =
    view.byteOffset % 4 === 0 ? view : new Uint8Array(view.buffer, view.byteOffset, view.byteLength).slice();
  state.words(new Uint32Array(aligned.buffer, aligned.byteOffset, whole));
  const rest = new Uint8Array(aligned.buffer, aligned.byteOffset + whole * 4, view.byteLength - whole * 4);
  for (const byte of rest) state.word(byte);
  state.word(view.byteLength);
  return state.name();
}
