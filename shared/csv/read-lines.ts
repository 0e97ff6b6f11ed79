import type { Encoding } from './encoding.ts';
import { readText } from './read-text.ts';

const LONGEST = 2000;

/**
 * The text of the given physical lines of a file (the first is 1), each up to the next line break and at most 2000
 * characters. The file is read up to the last of them.
 */
export async function readLines(
  bytes: AsyncIterable<Uint8Array>,
  encoding: Encoding,
  newline: '\n' | '\r',
  wanted: ReadonlySet<number>,
): Promise<Map<number, string>> {
  const found = new Map<number, string>();
  const last = Math.max(...wanted);
  let line = 1;
  let rest = '';
  const take = (text: string): void => {
    if (wanted.has(line)) found.set(line, text.slice(0, LONGEST).replace(/\r$/, ''));
    line++;
  };
  for await (const { text } of readText(bytes, encoding)) {
    let from = 0;
    for (let end = text.indexOf(newline); end >= 0; end = text.indexOf(newline, from)) {
      if (wanted.has(line)) take(rest + text.slice(from, end));
      else line++;
      rest = '';
      from = end + 1;
      if (line > last) return found;
    }
    if (rest.length <= LONGEST) rest += text.slice(from, from + LONGEST + 1);
  }
  take(rest);
  return found;
}
