import type { GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import type { ReadingColumns } from './reading-columns.ts';

export interface RowKeys {
  /** Of unit, time, fire, state, fuel; one a row. */
  readonly keyHashes: Int32Array;
  readonly sameKey: (a: number, b: number) => boolean;
  /** Of every value of the row. */
  readonly hash: (row: number) => number;
  readonly same: (a: number, b: number) => boolean;
}

/** Hashes and equality of rows over the growing columns; unknown equals unknown. */
export function keyedRows(columns: ReadingColumns): RowKeys {
  // Whether CO2 was measured is found out where one copy of an export does not say it.
  const texts = [...columns.texts].flatMap(([name, column]) =>
    name === 'co2_from' || column.codes.length === 0 ? [] : [column],
  );
  const numbers = [...columns.numbers.values()].filter(({ values }) => values.length > 0);
  const keyTexts = ['unit', 'fire', 'state', 'fuel'].flatMap((name) => columns.texts.get(name) ?? []);
  const keyNumbers = [columns.numbers.get('taken_at')!];
  return {
    keyHashes: hashes(keyTexts, keyNumbers, 0, columns.rows),
    sameKey: equality(keyTexts, keyNumbers),
    hash: (row) => hashes(texts, numbers, row, row + 1)[0],
    same: equality(texts, numbers),
  };
}

/** Column by column, since a loop over one typed array is the fastest there is. */
function hashes(
  texts: readonly GrowingTexts[],
  numbers: readonly GrowingNumbers[],
  from: number,
  to: number,
): Int32Array {
  const hash = new Int32Array(to - from).fill(0x811c9dc5);
  for (const { codes } of texts)
    for (let row = from; row < to; row++)
      hash[row - from] = Math.imul(hash[row - from] ^ (row < codes.length ? codes[row] : -1), 0x01000193);
  const cell = new Float64Array(1);
  const words = new Int32Array(cell.buffer);
  for (const { values } of numbers)
    for (let row = from; row < to; row++) {
      const value = values[row];
      // All NaN alike, and -0 like 0.
      cell[0] = row >= values.length || Number.isNaN(value) ? 0 : value + 0;
      hash[row - from] = Math.imul(Math.imul(hash[row - from] ^ words[0], 0x01000193) ^ words[1], 0x85ebca6b);
    }
  for (let i = 0; i < hash.length; i++) {
    const mixed = Math.imul(hash[i] ^ (hash[i] >>> 15), 0x2c1b3c6d);
    hash[i] = mixed ^ (mixed >>> 13);
  }
  return hash;
}

function equality(
  texts: readonly GrowingTexts[],
  numbers: readonly GrowingNumbers[],
): (a: number, b: number) => boolean {
  return (a, b) => {
    for (const column of texts) if (column.code(a) !== column.code(b)) return false;
    for (const column of numbers) {
      const [x, y] = [column.get(a), column.get(b)];
      if (x !== y && !(Number.isNaN(x) && Number.isNaN(y))) return false;
      if (column.boundAt(a) !== column.boundAt(b)) return false;
    }
    return true;
  };
}
