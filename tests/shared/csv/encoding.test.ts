import fc from 'fast-check';
import iconv from 'iconv-lite';
import { describe, expect, test } from 'vitest';
import { binaryKind } from '../../../shared/csv/binary-kind.ts';
import { detectEncoding } from '../../../shared/csv/encoding.ts';
import { readText } from '../../../shared/csv/read-text.ts';
import { WrongEncoding } from '../../../shared/csv/utf8-decoder.ts';

/** iconv-lite 0.7 (npm) writes the bytes; what is detected must read them back. */
const TEXT =
  'Anlage;Datum;Abgastemperatur [°C];Gasfließdruck\r\nB-01;12.03.2024;181,5;"Düse gereinigt, für Prüfung"\r\n';

async function decoded(bytes: Uint8Array, encoding: string, piece = 7): Promise<string> {
  const pieces = async function* (): AsyncGenerator<Uint8Array> {
    for (let from = 0; from < bytes.length; from += piece) yield bytes.subarray(from, from + piece);
  };
  let text = '';
  for await (const part of readText(pieces(), encoding)) text += part.text;
  return text;
}

describe('against iconv-lite', () => {
  test.each([
    ['utf8', false, 'utf-8'],
    ['utf8', true, 'utf-8'],
    ['utf16le', true, 'utf-16le'],
    ['utf16le', false, 'utf-16le'],
    ['utf16be', true, 'utf-16be'],
    ['utf16be', false, 'utf-16be'],
    ['win1252', false, 'windows-1252'],
    ['latin1', false, 'windows-1252'],
  ])('%s, with mark: %s', async (name, addBOM, expected) => {
    const bytes = iconv.encode(TEXT, name, { addBOM });
    const found = detectEncoding(bytes);
    expect(found?.encoding).toBe(expected);
    expect(await decoded(bytes, found?.encoding ?? '')).toBe(TEXT);
  });

  test('characters of Windows-1252 that Latin-1 lacks', async () => {
    const text = 'unit;note\r\nB-01;“ok” – 5 € œuvre…\r\n';
    const bytes = iconv.encode(text, 'win1252');
    expect(await decoded(bytes, detectEncoding(bytes)?.encoding ?? '')).toBe(text);
  });

  test('any text in UTF-8 or UTF-16, in any pieces', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'grapheme' }),
        fc.constantFrom('utf8', 'utf16le', 'utf16be'),
        fc.integer({ min: 1, max: 9 }),
        async (text, name, piece) => {
          const bytes = iconv.encode(text, name, { addBOM: true });
          const found = detectEncoding(bytes);
          expect(await decoded(bytes, found?.encoding ?? '', piece)).toBe(text);
        },
      ),
    );
  });
});

test('a byte that is no UTF-8 further down is told, not replaced', async () => {
  const bytes = Uint8Array.from([...new TextEncoder().encode('a,b\n'.repeat(50)), 0xe9, 10]);
  await expect(decoded(bytes, 'utf-8')).rejects.toBeInstanceOf(WrongEncoding);
});

test('bytes that are no text have no encoding', () => {
  expect(detectEncoding(Uint8Array.from({ length: 400 }, (_, i) => (i * 73) % 256))).toBeUndefined();
  expect(detectEncoding(Uint8Array.from([80, 75, 3, 4, 0, 0, 1, 2]))).toBeUndefined();
  expect(binaryKind(Uint8Array.from([80, 75, 3, 4, 0, 0]))).toContain('ZIP');
  expect(binaryKind(new TextEncoder().encode('unit,o2'))).toBeUndefined();
});
