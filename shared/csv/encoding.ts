import chardet from 'chardet';

/** A label that TextDecoder knows. */
export type Encoding = string;

export interface EncodingFound {
  readonly encoding: Encoding;
  /** One clause: what it was recognised by. */
  readonly reason: string;
}

const startsWith = (bytes: Uint8Array, ...mark: number[]): boolean => mark.every((byte, i) => bytes[i] === byte);
const WESTERN = ['ISO-8859-1', 'windows-1252', 'ASCII', 'UTF-8'];
/** Below this chardet's guess on a text of figures is noise, and the Western code page of six languages is likelier. */
const TRUSTED = 60;

/**
 * The encoding of a text file by its first bytes: a byte order mark settles it, then where the zero bytes stand (UTF-16),
 * then whether the bytes are valid UTF-8; else an 8-bit code page, Windows-1252 (which contains Latin-1) unless chardet is
 * sure of another. Undefined where the bytes are no text.
 */
export function detectEncoding(head: Uint8Array): EncodingFound | undefined {
  if (startsWith(head, 0xef, 0xbb, 0xbf)) return { encoding: 'utf-8', reason: 'byte order mark' };
  if (startsWith(head, 0xff, 0xfe)) return { encoding: 'utf-16le', reason: 'byte order mark' };
  if (startsWith(head, 0xfe, 0xff)) return { encoding: 'utf-16be', reason: 'byte order mark' };
  const wide = wideEncoding(head);
  if (wide) return { encoding: wide, reason: 'every other byte is zero' };
  if (!isText(head)) return undefined;
  if (isUtf8(head)) return { encoding: 'utf-8', reason: 'valid UTF-8' };
  return eightBit(head);
}

/** The code page of a text that is not UTF-8. */
export function eightBit(head: Uint8Array): EncodingFound {
  const [best] = chardet.analyse(head.subarray(0, 16_384));
  if (best && best.confidence >= TRUSTED && !WESTERN.includes(best.name) && decodes(best.name))
    return { encoding: best.name.toLowerCase(), reason: `letter statistics, ${best.confidence} %` };
  return { encoding: 'windows-1252', reason: 'not UTF-8, Western letters' };
}

/** UTF-16 without a mark: in figures and Latin letters one byte of each pair is zero. */
function wideEncoding(head: Uint8Array): Encoding | undefined {
  const pairs = Math.floor(Math.min(head.length, 4096) / 2);
  if (pairs < 2) return undefined;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let i = 0; i < pairs; i++) {
    if (head[2 * i] === 0) evenZeros++;
    if (head[2 * i + 1] === 0) oddZeros++;
  }
  if (oddZeros > 0.7 * pairs && evenZeros === 0) return 'utf-16le';
  if (evenZeros > 0.7 * pairs && oddZeros === 0) return 'utf-16be';
  return undefined;
}

/** Text of one byte a character has no zero bytes and next to no control characters. */
function isText(head: Uint8Array): boolean {
  let controls = 0;
  for (const byte of head) {
    if (byte === 0) return false;
    if (byte < 32 && (byte < 9 || byte > 13) && byte !== 26 && byte !== 27) controls++;
  }
  return controls <= head.length / 100;
}

function isUtf8(head: Uint8Array): boolean {
  try {
    // `stream` leaves a character cut off at the end for later.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
}

function decodes(label: string): boolean {
  try {
    new TextDecoder(label);
    return true;
  } catch {
    return false;
  }
}
