import type { CellName, Description, Segment } from './cell.ts';
import type { Question } from './outcome.ts';
import type { Column } from './table/table.ts';

/**
 * What the page, the report and the terminal know of a cell. Plain data, structured-cloneable; the tables themselves
 * stay with the worker that owns them.
 */
export interface CellState {
  readonly name: CellName;
  readonly kind: string;
  readonly title: string;
  readonly parameters: unknown;
  readonly sentence: readonly Segment[];
  /** The second sentence of its kind, where there is one. */
  readonly details: readonly Segment[];
  readonly reads: readonly CellName[];
  readonly phase: Phase;
  /** Share done while running. */
  readonly progress: number;
  /** The finished cell; with phase 'failed', 'asking' or 'waiting' the last good one, which is then stale. */
  readonly description: Description | undefined;
  readonly stale: boolean;
  /** One sentence when phase is 'failed'. */
  readonly message: string;
  readonly question: Question | undefined;
  /** The cells whose failure or question this one waits for. */
  readonly waitsFor: readonly CellName[];
  /** Rows of each result table. */
  readonly rows: Readonly<Record<string, number>>;
  /** One sentence: why it was, or was not, calculated again. */
  readonly why: string;
  /** Raised by one with every new result, so that a sheet knows when to ask for rows again. */
  readonly version: number;
}

export type Phase = 'idle' | 'running' | 'done' | 'failed' | 'asking' | 'waiting';

/** Which rows of a result table, in which order. */
export interface RowRange {
  readonly table: string;
  readonly from: number;
  readonly to: number;
  readonly sort?: { readonly column: string; readonly descending: boolean };
  /** Keep rows whose column reads exactly this text. */
  readonly filter?: { readonly column: string; readonly text: string };
}

export interface RowPage {
  /** Rows after the filter, not only those on this page. */
  readonly total: number;
  readonly from: number;
  readonly columns: ReadonlyMap<string, Column>;
  /** Row numbers in the whole table, where a filter or an order chose them; else they run from `from` on. */
  readonly rows?: Uint32Array;
}
