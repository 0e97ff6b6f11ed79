import { type ReadingColumns, ROW } from './reading-columns.ts';
import { keyedRows } from './row-keys.ts';

/** Pairs of rows, the later one first. */
export interface RowPairs {
  /** Equal in every value: the later row is a duplicate. */
  readonly duplicates: readonly (readonly [row: number, of: number])[];
  /** Equal in unit, time, fire, state and fuel, other values: a revised copy, or two readings at one minute. */
  readonly revised: readonly (readonly [row: number, of: number])[];
}

/**
 * Finds rows that say the same as an earlier one, by what they hold and not by where they stand, so that the same export
 * twice, under any name, adds nothing. Only rows that are accepted so far are looked at.
 */
export function findDuplicates(columns: ReadingColumns, status: Uint8Array): RowPairs {
  const { keyHash, sameKey, hash, same } = keyedRows(columns);
  const duplicates: [number, number][] = [];
  const revised: [number, number][] = [];
  const whole = new RowTable(columns.rows, hash, same);
  const keys = new RowTable(columns.rows, keyHash, sameKey);
  for (let row = 0; row < columns.rows; row++) {
    if (status[row] !== ROW.accepted) continue;
    const twin = whole.findOrAdd(row);
    if (twin >= 0) {
      duplicates.push([row, twin]);
      continue;
    }
    const other = keys.findOrAdd(row);
    if (other >= 0) revised.push([row, other]);
  }
  return { duplicates, revised };
}

/** Open addressing over row numbers: no key objects for a million rows. */
class RowTable {
  readonly #slots: Int32Array;
  readonly #hash: (row: number) => number;
  readonly #same: (a: number, b: number) => boolean;

  constructor(rows: number, hash: (row: number) => number, same: (a: number, b: number) => boolean) {
    let size = 16;
    while (size < rows * 2) size *= 2;
    this.#slots = new Int32Array(size).fill(-1);
    this.#hash = hash;
    this.#same = same;
  }

  /** The earlier row that is the same, or -1 after this one was added. */
  findOrAdd(row: number): number {
    const mask = this.#slots.length - 1;
    for (let slot = this.#hash(row) & mask; ; slot = (slot + 1) & mask) {
      const other = this.#slots[slot];
      if (other === -1) {
        this.#slots[slot] = row;
        return -1;
      }
      if (this.#same(row, other)) return other;
    }
  }
}
