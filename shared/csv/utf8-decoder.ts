/** Bytes that are not of the encoding that the beginning of the file showed. */
export class WrongEncoding extends Error {}

/** Decodes pieces of UTF-8 that cut no character; a byte order mark at the beginning of the file is left off. */
export class Utf8Decoder {
  readonly #decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  #begun = false;

  /** @throws WrongEncoding at a byte that is no UTF-8 */
  decode(piece: Uint8Array): string {
    const text = this.#decoded(piece);
    const marked = !this.#begun && text.charCodeAt(0) === 0xfeff;
    this.#begun = true;
    return marked ? text.slice(1) : text;
  }

  #decoded(piece: Uint8Array): string {
    try {
      return this.#decoder.decode(piece);
    } catch (cause) {
      throw new WrongEncoding('not utf-8', { cause });
    }
  }
}
