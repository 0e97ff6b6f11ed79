import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { RowKey } from '../../shared/corrections/correction.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type { SeenLine } from '../notebook/reading-key.ts';
import type { Comparison, HandedFile, MergeAnswers, MergeConflict, NotebookHead } from './protocol.ts';

/** What the page needs of the notebook behind it; everything that takes time is a promise. */
export interface PageSession {
  readonly title: string;
  /** ISO 8601 date. */
  readonly asOf: string;
  /**
   * The data files that it names: those that nobody has handed over, and those with another content than when saved; and
   * whether it is calculating, or was stopped at it.
   */
  readonly head: Pick<NotebookHead, 'missing' | 'changed' | 'revision' | 'busy' | 'stopped'>;
  /** Why nothing is calculated any more, '' while all is well. */
  readonly fault: string;
  states(): readonly CellState[];
  canUndo(): boolean;
  canRedo(): boolean;
  /** Called after every change of what the methods above return. Gives back how to stop listening. */
  onChange(listener: () => void): () => void;
  setParameter(cell: CellName, parameter: string, value: unknown): Promise<void>;
  /** Today's date is added to a correction that names none. */
  correct(cell: CellName, correction: Readonly<Record<string, unknown>>): Promise<void>;
  /** Hands over data files; a file of the same key is replaced. */
  addFiles(files: readonly { readonly key: string; readonly name: string; readonly blob: Blob }[]): Promise<void>;
  liftCorrection(cell: CellName, id: string, lifted: boolean): Promise<void>;
  /** Takes the content at hand of changed data files for good. */
  acceptFiles(keys: readonly string[]): Promise<void>;
  /** Every file handed over, by key: what the notebook needs to be opened again. */
  files(): readonly HandedFile[];
  /** As the calls of the same name; see TableCalls. */
  merge(fileName: string, text: string, answers: MergeAnswers): Promise<readonly MergeConflict[]>;
  compare(fileName: string, text: string): Promise<Comparison>;
  compareDays(from: string, to: string): Promise<Comparison>;
  readingKey(cell: CellName, range: RowRange, place: number, seen: SeenLine): Promise<RowKey>;
  words(cell: CellName, table: string, column: string): Promise<readonly string[]>;
  setAsOf(day: string): Promise<void>;
  /** As the calls of the same name; see TableCalls. */
  stop(): Promise<void>;
  goOn(): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  /** Gives back what the notebook holds of the computer; it is not asked again. */
  close(): void;
  /** Resolves when everything is calculated. */
  settled(): Promise<void>;
  rows(cell: CellName, range: RowRange): Promise<RowPage>;
  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]>;
  /** How one number of a cell came about, down to the lines of the files. */
  working(place: NumberPlace): Promise<ShownWorking>;
  /** The notebook's file as it would be saved now. */
  documentText(): Promise<string>;
  /** The files that the cells write, the report among them. */
  outputFiles(): Promise<readonly { readonly name: string; readonly blob: Blob }[]>;
}

/** How the user's own files are opened: by the part each plays. */
export type FileRole = 'readings' | 'register' | 'events' | 'fuel-use' | 'notebook';

export interface OwnFile {
  readonly role: FileRole;
  readonly file: File;
}
