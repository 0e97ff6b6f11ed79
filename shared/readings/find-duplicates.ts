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
export function findDuplicates(columns: ReadingColumns): RowPairs {
  const { keyHashes, sameKey, hash, same } = keyedRows(columns);
  const duplicates: [number, number][] = [];
  const revised: [number, number][] = [];
  const keys = new RowTable(columns.rows, sameKey);
  /** First row of a key that appears twice -> hash of all values -> rows. Few keys do. */
  const rivals = new Map<number, Map<number, number[]>>();
  for (let row = 0; row < columns.rows; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    const first = keys.findOrAdd(row, keyHashes[row]);
    if (first < 0) continue;
    const byHash = rivals.get(first) ?? new Map([[hash(first), [first]]]);
    rivals.set(first, byHash);
    const alike = byHash.get(hash(row)) ?? [];
    const twin = alike.find((other) => same(row, other));
    if (twin !== undefined) duplicates.push([row, twin]);
    else {
      revised.push([row, first]);
      byHash.set(hash(row), [...alike, row]);
    }
  }
  return { duplicates, revised };
}

/** Open addressing over row numbers: no key objects for a million rows. */
class RowTable {
  readonly #slots: Int32Array;
  readonly #same: (a: number, b: number) => boolean;

  constructor(rows: number, same: (a: number, b: number) => boolean) {
    let size = 16;
    while (size < rows * 1.6) size *= 2;
    this.#slots = new Int32Array(size);
    this.#same = same;
  }

  /** The earlier row that is the same, or -1 after this one was added. */
  findOrAdd(row: number, hash: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      // Rows are kept counted from 1, since memory comes as zeros.
      const other = slots[slot] - 1;
      if (other < 0) {
        slots[slot] = row + 1;
        return -1;
      }
      if (this.#same(row, other)) return other;
    }
  }
}
