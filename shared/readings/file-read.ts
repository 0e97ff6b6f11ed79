import type { LineKind } from './classify-line.ts';
import type { MaybeCo } from './co-watch.ts';
import type { FilePlan } from './mapping.ts';
import type { RowReader, StrangeWord } from './row-reader.ts';

/** A proposed reading that is not accepted. */
export interface SetAside {
  readonly file: number;
  readonly line: number;
  readonly reason: string;
  /** Whether its text ends with its line whatever quotes are open on it. */
  readonly oneLine?: boolean;
  /** Its CO as written, where that is high: such a row is listed first. */
  readonly highCo: string;
}

/** What the readers of a file's rows saw. */
export interface ReaderTold extends Pick<RowReader, 'dates' | 'openFrom'> {
  readonly words: ReadonlyMap<string, StrangeWord>;
  readonly otherMarks: ReadonlyMap<string, string>;
  /** Words for flags that were not understood, by head. */
  readonly unread: ReadonlyMap<string, { readonly count: number; readonly example: string }>;
}

/** What one file held, beside the rows that went into the columns. */
export interface FileRead {
  /** Whether as many bytes came as the file had when it was opened; else it changed meanwhile. */
  readonly whole: boolean;
  readonly plan: FilePlan;
  readonly reader: ReaderTold;
  readonly setAside: readonly SetAside[];
  /** Lines by what they are; those of readings are counted as records. */
  readonly lines: Readonly<Record<LineKind, number>>;
  /** Lines on which CO is dashes beside other values. */
  readonly coDashes: readonly number[];
  readonly maybeCo: readonly MaybeCo[];
}
