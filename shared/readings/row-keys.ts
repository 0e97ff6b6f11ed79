import type { GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import type { ReadingColumns } from './reading-columns.ts';

export interface RowKeys {
  /** Of unit, time, fire, state, fuel. */
  readonly keyHash: (row: number) => number;
  readonly sameKey: (a: number, b: number) => boolean;
  /** Of every value of the row. */
  readonly hash: (row: number) => number;
  readonly same: (a: number, b: number) => boolean;
}

/** Hashes and equality of rows over the growing columns; unknown equals unknown. */
export function keyedRows(columns: ReadingColumns): RowKeys {
  const texts = [...columns.texts.values()].filter(({ codes }) => codes.length > 0);
  const numbers = [...columns.numbers.values()].filter(({ values }) => values.length > 0);
  const keyTexts = ['unit', 'fire', 'state', 'fuel'].flatMap((name) => columns.texts.get(name) ?? []);
  const keyNumbers = [columns.numbers.get('taken_at')!];
  return {
    keyHash: hashOf(keyTexts, keyNumbers),
    sameKey: equality(keyTexts, keyNumbers),
    hash: hashOf(texts, numbers),
    same: equality(texts, numbers),
  };
}

function hashOf(texts: readonly GrowingTexts[], numbers: readonly GrowingNumbers[]): (row: number) => number {
  const cell = new Float64Array(1);
  const words = new Int32Array(cell.buffer);
  return (row) => {
    let hash = 0x811c9dc5;
    for (const column of texts) hash = Math.imul(hash ^ column.code(row), 0x01000193);
    for (const column of numbers) {
      const value = column.get(row);
      // All NaN alike, and -0 like 0.
      cell[0] = Number.isNaN(value) ? 0 : value + 0;
      hash = Math.imul(hash ^ words[0], 0x01000193);
      hash = Math.imul(hash ^ words[1], 0x85ebca6b);
    }
    hash ^= hash >>> 15;
    hash = Math.imul(hash, 0x2c1b3c6d);
    return hash ^ (hash >>> 13);
  };
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
