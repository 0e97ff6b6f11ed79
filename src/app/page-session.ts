import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';

/** A file of the user's, under the name by which the notebook lists it. */
export interface OpenedFile {
  readonly key: string;
  readonly file: File;
}

/** What the page needs of the notebook behind it; everything that takes time is a promise. */
export interface PageSession {
  readonly title: string;
  /** ISO 8601 date. */
  readonly asOf: string;
  states(): readonly CellState[];
  canUndo(): boolean;
  canRedo(): boolean;
  /** Called after every change of what the methods above return. Gives back how to stop listening. */
  onChange(listener: () => void): () => void;
  setParameter(cell: CellName, parameter: string, value: unknown): Promise<void>;
  setAsOf(day: string): Promise<void>;
  undo(): Promise<void>;
  redo(): Promise<void>;
  /** Resolves when everything is calculated. */
  settled(): Promise<void>;
  rows(cell: CellName, range: RowRange): Promise<RowPage>;
  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]>;
  /** The notebook's file as it would be saved now. */
  documentText(): Promise<string>;
  /** The files that the cells write, the report among them. */
  outputFiles(): Promise<readonly { readonly name: string; readonly blob: Blob }[]>;
}

/** How the user's own files are opened: by the part each plays. */
export type FileRole = 'readings' | 'register' | 'events' | 'fuel-use';

export interface OwnFile {
  readonly role: FileRole;
  readonly file: File;
}
