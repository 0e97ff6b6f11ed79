import type { ReadingColumns } from './reading-columns.ts';
import { rowComparison } from './row-comparison.ts';

/** Pairs of rows, the later one first. */
export interface RowPairs {
  /** Equal in every value: the later row is a duplicate. */
  readonly duplicates: readonly (readonly [row: number, of: number])[];
  /** Equal in unit, time, fire, firing rate, state and fuel, other values: a revised copy, or two readings at one minute. */
  readonly revised: readonly (readonly [row: number, of: number])[];
}

/**
 * Finds rows that say the same as an earlier one, by what they hold and not by where they stand, so that the same export
 * twice, under any name, adds nothing. `order` is that of sortRows, in which such rows are neighbors.
 */
export function findDuplicates(columns: ReadingColumns, order: Int32Array): RowPairs {
  const found: { duplicates: [number, number][]; revised: [number, number][] } = { duplicates: [], revised: [] };
  const taken = columns.numbers.get('taken_at')!.values;
  const [unit, fire, state] = ['unit', 'fire', 'state'].map(
    (name) => columns.texts.get(name)?.codes ?? new Int32Array(0),
  );
  for (let from = 0; from < order.length; ) {
    const first = order[from];
    let to = from + 1;
    while (
      to < order.length &&
      taken[order[to]] === taken[first] &&
      unit[order[to]] === unit[first] &&
      fire[order[to]] === fire[first] &&
      state[order[to]] === state[first]
    )
      to++;
    if (to - from > 1) compareGroup(columns, order.subarray(from, to), found);
    from = to;
  }
  return found;
}

function compareGroup(
  columns: ReadingColumns,
  rows: Int32Array,
  found: { duplicates: [number, number][]; revised: [number, number][] },
): void {
  const { hash, same, samePoint } = rowComparison(columns);
  const byHash = new Map<number, number[]>();
  const kept: number[] = [];
  for (const row of rows) {
    const alike = byHash.get(hash(row)) ?? [];
    const twin = alike.find((other) => same(row, other));
    if (twin !== undefined) {
      found.duplicates.push([row, twin]);
      continue;
    }
    const other = kept.find((earlier) => samePoint(row, earlier));
    if (other !== undefined) found.revised.push([row, other]);
    kept.push(row);
    byHash.set(hash(row), [...alike, row]);
  }
}
