import type { TextColumn } from '../table/table.ts';

/**
 * Analyzers that are told apart at most. What all units share is solved densely, twice a column for each of them, so that three
 * times as many would take thirty times as long; and an id of which there are hundreds is one that few units share.
 */
export const MOST_ANALYZERS = 100;

export interface UsedAnalyzers {
  /** Per row of the order: the analyzer's code, -1 where none is named or it is not among those told apart. */
  readonly codes: Int32Array;
  readonly names: readonly string[];
}

/** The analyzers of rows, of too many those with the most readings; what another one adds belongs to each visit's own effect. */
export function mostUsedAnalyzers(column: TextColumn, order: ArrayLike<number>): UsedAnalyzers {
  const { levels, codes } = column;
  const readings = new Int32Array(levels.length);
  for (let i = 0; i < order.length; i++) if (codes[order[i]] >= 0) readings[codes[order[i]]]++;
  const all = levels.map((_, code) => code);
  const kept =
    all.length <= MOST_ANALYZERS
      ? all
      : all
          .sort((a, b) => readings[b] - readings[a] || a - b)
          .slice(0, MOST_ANALYZERS)
          .sort((a, b) => a - b);
  const place = new Int32Array(levels.length).fill(-1);
  kept.forEach((code, at) => {
    place[code] = at;
  });
  return {
    codes: Int32Array.from(order, (row) => (codes[row] < 0 ? -1 : place[codes[row]])),
    names: kept.map((code) => levels[code]),
  };
}
