import type { CellName } from './cell.ts';
import type { CellState, RowPage, RowRange } from './cell-state.ts';
import type { RowKey } from './corrections/correction.ts';
import type { UnitLanes } from './lanes/lane.ts';
import type { ShownWorking } from './working/shown-working.ts';
import type { NumberPlace } from './working/working.ts';

/** What a view may ask of the page around it. */
export interface ViewHost {
  rows(cell: CellName, range: RowRange): Promise<RowPage>;
  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]>;
  /** How one number of a cell came about, down to the lines of the files. */
  working(place: NumberPlace): Promise<ShownWorking>;
  /** Resolves when everything that follows from it is calculated. */
  setParameter(cell: CellName, parameter: string, value: unknown): Promise<void>;
  /**
   * Lays a correction over the readings that a cell gives; today's date is added where it names none. Resolves, when
   * everything that follows is calculated, with '' or the sentence that says why it was not made.
   */
  correct(cell: CellName, correction: Readonly<Record<string, unknown>>): Promise<string>;
  /** Lifts a correction of a corrections cell off, or lays it back on. */
  liftCorrection(cell: CellName, id: string, lifted: boolean): Promise<string>;
  /** The key by which a correction names the reading that a sheet of the cell shows at this place. */
  readingKey(cell: CellName, range: RowRange, place: number, seen: { file: string; line: number }): Promise<RowKey>;
  /** The different texts of a column of a cell's table. */
  words(cell: CellName, table: string, column: string): Promise<readonly string[]>;
  /** The user's own calendar day, YYYY-MM-DD. */
  today(): string;
  /** Another cell as it is now. */
  state(cell: CellName): CellState | undefined;
  /** Called after every change of any cell. Gives back how to stop listening. */
  onChange(listener: () => void): () => void;
  /** Opens the user's files and hands them to the cell's list-of-files parameter. */
  openFiles(cell: CellName, parameter: string): void;
}
