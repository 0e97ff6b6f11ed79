/**
 * Looking back: cells calculated once more, as of past days. What such a cell reads is replayed too where it is listed, and is
 * the present result where it is not: list every cell whose result depends on the day, unless its readers cut it off
 * at theirs.
 */
export interface Replays {
  /** Names of cells. */
  readonly cells: readonly string[];
  /** Days since 1970-01-01. */
  readonly days: readonly number[];
}

/** The name under which a replayed cell stands among the inputs of the cell that asked for it. */
export const replayName = (cell: string, day: number): string => `${cell}@${day}`;
