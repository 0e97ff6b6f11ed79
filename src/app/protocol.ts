import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import type { ReviewRequest } from '../notebook/campus-review.ts';
import type { RaisedChanges } from '../../shared/limits/raised-changes.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type { Edit } from '../notebook/edit.ts';

/** A file as the page hands it to the worker; the bytes stay where the browser keeps them. */
export interface HandedFile {
  readonly key: string;
  readonly name: string;
  readonly blob: Blob;
}

/** Everything of a notebook but its cells' states. */
export interface NotebookHead {
  readonly title: string;
  /** YYYY-MM-DD. */
  readonly asOf: string;
  readonly order: readonly CellName[];
  /** Data files that the notebook names but the page has not handed over. */
  readonly missing: readonly string[];
  /** Sentences about the notebook as a whole: a data file changed, an older format was brought up to date. */
  readonly notices: readonly string[];
  readonly undoSteps: number;
  readonly redoSteps: number;
  /** True while something is being calculated. */
  readonly busy: boolean;
}

export type ReviewOfFiles = Omit<ReviewRequest, 'data'>;

/** A file that a cell wrote, ready to be saved. */
export interface WrittenFile {
  readonly name: string;
  readonly cell: CellName;
  readonly blob: Blob;
}

/** What the page asks of the worker that owns the tables. Every call answers with a promise; a refusal is one sentence. */
export interface TableCalls {
  /** Opens a saved notebook (the text of its file) with the data files at hand, and begins to calculate. */
  openNotebook(fileName: string, text: string, files: readonly HandedFile[]): void;
  /** Builds a campus review over the user's own files, opens it and begins to calculate. */
  openReview(request: ReviewOfFiles, files: readonly HandedFile[]): void;
  /** Hands over files that were missing, or new ones; they are added to the notebook's data list. */
  addFiles(files: readonly HandedFile[]): void;
  edit(edit: Edit): void;
  /**
   * Takes in another notebook of the same fleet, as one step that can be undone. Answers with the places where the two
   * contradict each other, one line each; while there are any and nobody says which to keep, nothing changes.
   */
  merge(fileName: string, text: string, keep?: 'first' | 'second'): readonly string[];
  /** What another notebook decided otherwise, one line each. */
  compare(fileName: string, text: string): readonly string[];
  undo(): void;
  redo(): void;
  rows(cell: CellName, range: RowRange): RowPage;
  lanes(cell: CellName, units: readonly string[]): readonly UnitLanes[];
  /** One sentence: why the cell was, or was not, calculated again. */
  why(cell: CellName): string;
  /** The notebook's file as it would be saved now. */
  documentText(): string;
  /** The files that `review` and `calculate` write, report.html among them. */
  outputFiles(): readonly WrittenFile[];
  /** Resolves when everything is calculated. */
  settled(): void;
}

export type CallName = keyof TableCalls;

export type TableRequest = {
  [Name in CallName]: {
    readonly id: number;
    readonly call: Name;
    readonly arguments: Parameters<TableCalls[Name]>;
  };
}[CallName];

export type TableReply =
  | { readonly kind: 'answer'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'refusal'; readonly id: number; readonly message: string }
  /** Sent whenever they change; states are those of the changed cells only. */
  | { readonly kind: 'news'; readonly head: NotebookHead; readonly states: readonly CellState[] };
  /** How one number of a cell came about, down to the lines of the files. */
  working(place: NumberPlace): ShownWorking;
