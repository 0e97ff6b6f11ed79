import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { RowKey } from '../../shared/corrections/correction.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import type { RaisedChanges } from '../../shared/limits/raised-changes.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type { ReviewRequest } from '../notebook/campus-review.ts';
import type { Edit } from '../notebook/edit.ts';
import type { SeenLine } from '../notebook/reading-key.ts';

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
  /** Keys of data files that the notebook names but the page has not handed over. */
  readonly missing: readonly string[];
  /** Keys of data files whose content is not that with which the notebook was saved. */
  readonly changed: readonly string[];
  /** Raised with every change of the notebook itself. */
  readonly revision: number;
  readonly undoSteps: number;
  readonly redoSteps: number;
  /** True while something is being calculated. */
  readonly busy: boolean;
  /** True from `stop` until something is calculated again. */
  readonly stopped: boolean;
}

export type ReviewOfFiles = Omit<ReviewRequest, 'data'>;

/** A file that a cell wrote, ready to be saved. */
export interface WrittenFile {
  readonly name: string;
  readonly cell: CellName;
  readonly blob: Blob;
}

/** Two notebooks hold different things in one place, and only the user can say which counts. */
export interface MergeConflict {
  readonly place: string;
  /** What the open notebook holds, and what the other one. */
  readonly here: unknown;
  readonly there: unknown;
}

/** By place. */
export type MergeAnswers = Readonly<Record<string, 'here' | 'there'>>;

export interface Comparison {
  /** One line each. */
  readonly decided: readonly string[];
  /** Undefined where one of the two has no list of raised units, which `fault` then says. */
  readonly changes: RaisedChanges | undefined;
  readonly fault: string;
}

/** What the page asks of the worker that owns the tables. Every call answers with a promise; a refusal is one sentence. */
export interface TableCalls {
  /** Opens a saved notebook (the text of its file) with the data files at hand, and begins to calculate. */
  openNotebook(fileName: string, text: string, files: readonly HandedFile[]): void;
  /** Builds a campus review over the user's own files, opens it and begins to calculate. */
  openReview(request: ReviewOfFiles, files: readonly HandedFile[]): void;
  /**
   * Hands over files that were missing, or new ones. New ones are added to the notebook's data list; one that the notebook
   * lists with another content is read, and stands among the changed until `acceptFiles` takes it for good.
   */
  addFiles(files: readonly HandedFile[]): void;
  /** Takes the content at hand for that of the notebook, as an edit. */
  acceptFiles(keys: readonly string[]): void;
  edit(edit: Edit): void;
  /**
   * Takes in another notebook of the same fleet, as one step that can be undone. Answers with the places where the two
   * contradict each other and no answer says which counts; while there are any, nothing changes.
   */
  merge(fileName: string, text: string, answers: MergeAnswers): readonly MergeConflict[];
  /** What another notebook decided otherwise, and which units that raises or clears. */
  compare(fileName: string, text: string): Comparison;
  /** The same between this notebook looking from one day and from another, YYYY-MM-DD. */
  compareDays(from: string, to: string): Comparison;
  /** The key by which a correction names the reading that a sheet shows at this place. */
  readingKey(cell: CellName, range: RowRange, place: number, seen: SeenLine): RowKey;
  /** The different texts of a column, as far as rows hold them. */
  words(cell: CellName, table: string, column: string): readonly string[];
  /** Ends what is being calculated; the cells that it did not come to stay as they were, and say so. */
  stop(): void;
  /** Calculates what a stopped calculation left. */
  goOn(): void;
  undo(): void;
  redo(): void;
  rows(cell: CellName, range: RowRange): RowPage;
  lanes(cell: CellName, units: readonly string[]): readonly UnitLanes[];
  /** How one number of a cell came about, down to the lines of the files. */
  working(place: NumberPlace): ShownWorking;
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
