const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;
/** A line longer than this is handed on in parts. */
const LONGEST = 1 << 20;

/**
 * Cuts the bytes of a UTF-8 file behind line ends, and never inside a character. What is handed out lies in a buffer
 * that is used again and holds until the next call.
 */
export class WholeLines {
  readonly #least: number;
  #buffer: Uint8Array;
  #length = 0;
  /** Up to here no line ends. */
  #searched = 0;

  /** Pieces are at least `least` bytes long, but for the last one. */
  constructor(least: number) {
    this.#least = least;
    this.#buffer = new Uint8Array(4 * least);
  }

  /** The pieces that this chunk completes; each is to be used before the next is asked for. */
  *push(chunk: Uint8Array): Generator<Uint8Array> {
    let from = 0;
    while (from < chunk.length) {
      // New memory costs more than copying: a large chunk is taken in parts that fit.
      if (this.#length === this.#buffer.length) this.#grow();
      const part = chunk.subarray(from, from + Math.min(this.#least, this.#buffer.length - this.#length));
      this.#buffer.set(part, this.#length);
      this.#length += part.length;
      from += part.length;
      if (this.#length < this.#least) continue;
      const end = this.#cut();
      this.#searched = end === 0 ? this.#length : 0;
      if (end === 0) continue;
      yield this.#buffer.subarray(0, end);
      this.#buffer.copyWithin(0, end, this.#length);
      this.#length -= end;
    }
  }

  /** What stands behind the last cut. */
  rest(): Uint8Array {
    return this.#buffer.subarray(0, this.#length);
  }

  /** Behind the last line end; where no line ends, 0 up to the longest line, then behind the last whole character. */
  #cut(): number {
    const fresh = this.#buffer.subarray(this.#searched, this.#length);
    const feed = fresh.lastIndexOf(LINE_FEED);
    const end = feed >= 0 ? feed + 1 : fresh.lastIndexOf(CARRIAGE_RETURN) + 1;
    if (end > 0) return this.#searched + end;
    return this.#length < LONGEST ? 0 : beforeLastCharacter(this.#buffer.subarray(0, this.#length));
  }

  #grow(): void {
    const grown = new Uint8Array(2 * this.#buffer.length);
    grown.set(this.#buffer);
    this.#buffer = grown;
  }
}

/** Where the last character begins: a character cut off at the end stands behind it. Four bytes are the longest one. */
function beforeLastCharacter(bytes: Uint8Array): number {
  for (let at = bytes.length - 1; at > bytes.length - 5 && at > 0; at--) if ((bytes[at] & 0xc0) !== 0x80) return at;
  return bytes.length;
}

export interface BytePiece {
  /** Holds until the next piece is asked for. */
  readonly piece: Uint8Array;
  /** Bytes of the file read so far. */
  readonly bytes: number;
}

/** The bytes of a file in pieces of at least `least` bytes that end with a line, wherever one ends within a megabyte. */
export async function* readWholeLines(bytes: AsyncIterable<Uint8Array>, least: number): AsyncGenerator<BytePiece> {
  const lines = new WholeLines(least);
  let read = 0;
  for await (const chunk of bytes) {
    read += chunk.byteLength;
    for (const piece of lines.push(chunk)) yield { piece, bytes: read };
  }
  const piece = lines.rest();
  if (piece.length > 0) yield { piece, bytes: read };
}
