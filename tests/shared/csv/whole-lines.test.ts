import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readText } from '../../../shared/csv/read-text.ts';
import { WholeLines } from '../../../shared/csv/whole-lines.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The pieces as text of their own, each decoded alone. */
function piecesOf(bytes: Uint8Array, chunk: number, least: number): string[] {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const lines = new WholeLines(least);
  const found: string[] = [];
  for (let from = 0; from < bytes.length; from += chunk)
    for (const piece of lines.push(bytes.subarray(from, from + chunk))) found.push(decoder.decode(piece));
  return [...found, decoder.decode(lines.rest())];
}

describe('pieces of whole lines', () => {
  test('joined they are the text, and each but the last ends with a line', () => {
    const character = fc.constantFrom('a', '1', ',', '\n', '\r\n', 'é', '€', '🔥', '\ufeff');
    fc.assert(
      fc.property(
        fc.array(character, { maxLength: 200 }),
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 1, max: 40 }),
        (characters, chunk, least) => {
          const text = characters.join('');
          const pieces = piecesOf(bytesOf(text), chunk, least);
          expect(pieces.join('')).toBe(text);
          for (const piece of pieces.slice(0, -1)) expect(piece).toMatch(/[\r\n]$/);
        },
      ),
    );
  });

  test('lines that end with CR alone are whole too', () => {
    expect(piecesOf(bytesOf('ab\rcd\ref'), 3, 4)).toEqual(['ab\rcd\r', 'ef']);
  });

  test('a line longer than a megabyte comes in parts that cut no character', () => {
    const text = `a,b\n${'x🔥é'.repeat(400_000)}\nc,d\n`;
    const pieces = piecesOf(bytesOf(text), 65_537, 65_536);
    expect(pieces.join('') === text).toBe(true);
    expect(Math.max(...pieces.map((piece) => piece.length))).toBeLessThan(1_200_000);
  });
});

test('a mark of byte order is left off at the beginning of the file only', async () => {
  const line = `${'x'.repeat(1000)}\n`;
  const text = `${line.repeat(300)}\ufeff${line.repeat(300)}`;
  const bytes = bytesOf(`\ufeff${text}`);
  const pieces = async function* (): AsyncGenerator<Uint8Array> {
    yield bytes;
  };
  let read = '';
  for await (const piece of readText(pieces(), 'utf-8')) read += piece.text;
  expect(read === text).toBe(true);
});
