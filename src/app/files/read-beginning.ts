import { fileBinary, fileEmpty, fileOfOtherKind, fileUnreadable } from '../../../shared/messages/page.ts';
import { fail, type Outcome, succeed } from '../../../shared/outcome.ts';

const BEGINNING_BYTES = 4096;

/** The first lines of a file as text, or one sentence why it is no file of readings. UTF-16 is told by its mark. */
export async function readBeginning(file: File): Promise<Outcome<string>> {
  if (file.size === 0) return fail(fileEmpty(file.name));
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.slice(0, BEGINNING_BYTES).arrayBuffer());
  } catch (cause) {
    return fail(fileUnreadable(file.name, cause instanceof Error ? cause.message : String(cause)));
  }
  const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const zeros = bytes.reduce((count, byte) => count + (byte === 0 ? 1 : 0), 0);
  const isPacked = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3;
  // Without a mark, UTF-16 text still has a zero in about every second byte; anything else with zeros is no text.
  if (isPacked || (!wide && zeros > 0 && Math.abs(zeros / bytes.length - 0.5) > 0.1))
    return fail(fileBinary(file.name));
  const encoding = wide ? (bytes[0] === 0xff ? 'utf-16le' : 'utf-16be') : 'utf-8';
  const text = new TextDecoder(encoding).decode(bytes);
  const other = otherKind(text);
  return other === '' ? succeed(text) : fail(fileOfOtherKind(file.name, other));
}

/** What a text is that is neither a table nor a notebook of ours, '' where it may be either. */
function otherKind(text: string): string {
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (/^%PDF-/.test(start)) return 'a PDF document';
  if (/^(<!doctype|<html|<\?xml|<svg)/i.test(start)) return 'a page or drawing, written in tags';
  if (/^\{\\rtf/.test(start)) return 'a formatted document';
  if (/^[{[]/.test(start) && !/"format"\s*:\s*"between-visits-notebook"/.test(start)) return 'JSON, and no notebook';
  return '';
}
