import type { RowRange } from '../cell-state.ts';
import type { Table } from '../table/table.ts';

/** Something that the user may accept by putting its key into a list that the cell has as a parameter. */
export interface Acceptable {
  readonly key: string;
  readonly words: string;
  readonly evidence: string;
}

/** Where a cell keeps what may be accepted, and how it is listed. */
export interface AcceptableSource {
  /** The cell's result table, and which of its rows. */
  readonly table: string;
  readonly filter?: RowRange['filter'];
  /** Its rows as lists under a head each; `allKey` accepts a whole list, also what comes later. */
  lists(table: Table): readonly {
    readonly head: string;
    readonly allKey: string;
    readonly entries: readonly Acceptable[];
  }[];
}
