import type { SmallRow } from '../../shared/readings/read-table.ts';

/** A row of the register whose fuel is known by its canonical name, or '' where the register gives none. */
export interface RegisterRow extends SmallRow {
  readonly fuel: string;
}
