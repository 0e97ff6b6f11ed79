import type { Encoding } from './encoding.ts';
import { Utf8Decoder } from './utf8-decoder.ts';
import { readWholeLines } from './whole-lines.ts';

export interface TextPiece {
  readonly text: string;
  /** Bytes of the file read so far. */
  readonly bytes: number;
}

/** Pieces are joined up to this many bytes: small enough that what is read of one is gone before memory is swept. */
const PIECE_BYTES = 1 << 16;

/**
 * The text of a file in pieces, its byte order mark left off. Pieces may end inside a line or a field; those of UTF-8
 * end with a line wherever one ends within a megabyte.
 * @throws WrongEncoding at the first byte that is no UTF-8, where that was expected; other encodings take any byte.
 */
export function readText(bytes: AsyncIterable<Uint8Array>, encoding: Encoding): AsyncGenerator<TextPiece> {
  return encoding === 'utf-8' ? readUtf8(bytes) : readAny(bytes, encoding);
}

/** Whole lines at a time: engines decode a piece that stands alone many times faster than one of a stream. */
async function* readUtf8(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<TextPiece> {
  const decoder = new Utf8Decoder();
  for await (const { piece, bytes: read } of readWholeLines(bytes, PIECE_BYTES)) {
    const text = decoder.decode(piece);
    if (text !== '') yield { text, bytes: read };
  }
}

async function* readAny(bytes: AsyncIterable<Uint8Array>, encoding: Encoding): AsyncGenerator<TextPiece> {
  const decoder = new TextDecoder(encoding);
  let text = '';
  let read = 0;
  for await (const chunk of bytes) {
    text += decoder.decode(chunk, { stream: true });
    read += chunk.byteLength;
    if (text.length < PIECE_BYTES) continue;
    yield { text, bytes: read };
    text = '';
  }
  text += decoder.decode();
  if (text !== '') yield { text, bytes: read };
}
