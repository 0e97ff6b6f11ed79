import type { Encoding } from './encoding.ts';
import { WholeLines } from './whole-lines.ts';

export interface TextPiece {
  readonly text: string;
  /** Bytes of the file read so far. */
  readonly bytes: number;
}

/** Bytes that are not of the encoding that the beginning of the file showed. */
export class WrongEncoding extends Error {}

/** Pieces are joined up to this many bytes: fewer, larger pieces parse faster. */
const PIECE_BYTES = 1 << 18;

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
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const lines = new WholeLines(PIECE_BYTES);
  let begun = false;
  const decode = (piece: Uint8Array): string => {
    const text = decoded(decoder, piece);
    const marked = !begun && text.charCodeAt(0) === 0xfeff;
    begun = true;
    return marked ? text.slice(1) : text;
  };
  let read = 0;
  for await (const chunk of bytes) {
    read += chunk.byteLength;
    for (const piece of lines.push(chunk)) {
      const text = decode(piece);
      if (text !== '') yield { text, bytes: read };
    }
  }
  const text = decode(lines.rest());
  if (text !== '') yield { text, bytes: read };
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

function decoded(decoder: TextDecoder, piece: Uint8Array): string {
  try {
    return decoder.decode(piece);
  } catch (cause) {
    throw new WrongEncoding(`not ${decoder.encoding}`, { cause });
  }
}
