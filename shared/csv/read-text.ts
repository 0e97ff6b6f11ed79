import type { Encoding } from './encoding.ts';

export interface TextPiece {
  readonly text: string;
  /** Bytes of the file read so far. */
  readonly bytes: number;
}

/** Bytes that are not of the encoding that the beginning of the file showed. */
export class WrongEncoding extends Error {}

/** Pieces are joined up to this many characters: fewer, larger pieces parse faster. */
const PIECE = 1 << 18;

/**
 * The text of a file in pieces, its byte order mark left off. Pieces end anywhere, inside a line or a field too.
 * @throws WrongEncoding at the first byte that is no UTF-8, where that was expected; other encodings take any byte.
 */
export async function* readText(bytes: AsyncIterable<Uint8Array>, encoding: Encoding): AsyncGenerator<TextPiece> {
  const decoder = new TextDecoder(encoding, { fatal: encoding === 'utf-8' });
  const decode = (chunk?: Uint8Array): string => {
    try {
      return chunk ? decoder.decode(chunk, { stream: true }) : decoder.decode();
    } catch (cause) {
      throw new WrongEncoding(`not ${encoding}`, { cause });
    }
  };
  let text = '';
  let read = 0;
  for await (const chunk of bytes) {
    text += decode(chunk);
    read += chunk.byteLength;
    if (text.length < PIECE) continue;
    yield { text, bytes: read };
    text = '';
  }
  text += decode();
  if (text !== '') yield { text, bytes: read };
}
