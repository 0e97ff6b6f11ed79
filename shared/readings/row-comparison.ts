import type { ReadingColumns } from './reading-columns.ts';

export interface RowComparison {
  /** Of every value of the row. */
  hash(row: number): number;
  /** Equal in every value; unknown equals unknown. */
  same(a: number, b: number): boolean;
  /** Of one fuel and, where both tell it, at one firing rate: else they are two readings. */
  samePoint(a: number, b: number): boolean;
}

const known = new WeakMap<ReadingColumns, RowComparison>();

/** Compares rows of the growing columns by what they hold; where they stand in which file does not count. */
export function rowComparison(columns: ReadingColumns): RowComparison {
  const comparison = known.get(columns) ?? compare(columns);
  known.set(columns, comparison);
  return comparison;
}

function compare(columns: ReadingColumns): RowComparison {
  // Whether CO2 was measured is found out where one copy of an export does not say it.
  const texts = [...columns.texts].flatMap(([name, column]) => (name === 'co2_from' ? [] : [column]));
  const numbers = [...columns.numbers.values()].filter(({ values }) => values.length > 0);
  const cell = new Float64Array(1);
  const words = new Int32Array(cell.buffer);
  return {
    hash: (row) => {
      let hash = 0x811c9dc5;
      for (const column of texts) hash = Math.imul(hash ^ column.code(row), 0x01000193);
      for (const column of numbers) {
        const value = column.get(row);
        // All NaN alike, and -0 like 0.
        cell[0] = Number.isNaN(value) ? 0 : value + 0;
        hash = Math.imul(Math.imul(hash ^ words[0], 0x01000193) ^ words[1], 0x85ebca6b);
      }
      return hash;
    },
    same: (a, b) => {
      for (const column of texts) if (column.code(a) !== column.code(b)) return false;
      for (const column of numbers) {
        const [x, y] = [column.get(a), column.get(b)];
        if (x !== y && !(Number.isNaN(x) && Number.isNaN(y))) return false;
        if (column.boundAt(a) !== column.boundAt(b)) return false;
      }
      return true;
    },
    samePoint: (a, b) => {
      const rate = columns.numbers.get('firing_rate_pct');
      const [one, other] = [rate?.get(a), rate?.get(b)].map((value) => value ?? Number.NaN);
      const fuel = columns.texts.get('fuel');
      return fuel?.code(a) === fuel?.code(b) && !(Math.abs(one - other) > 0);
    },
  };
}
