import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { RowKey } from '../../shared/corrections/correction.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import { localDay } from '../../shared/quantities/local-day.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type { Edit } from '../notebook/edit.ts';
import type { SeenLine } from '../notebook/reading-key.ts';
import type {
  CallName,
  Comparison,
  HandedFile,
  MergeAnswers,
  MergeConflict,
  NotebookHead,
  ReviewOfFiles,
  TableCalls,
  TableReply,
  WrittenFile,
} from './protocol.ts';

interface Waiting {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

const EMPTY_HEAD: NotebookHead = {
  title: '',
  asOf: '',
  order: [],
  missing: [],
  changed: [],
  revision: 0,
  undoSteps: 0,
  redoSteps: 0,
  busy: false,
  stopped: false,
};

/**
 * The page's side of the worker that owns the tables: a mirror of the cells' states that is always at hand, and promises
 * for everything else. A refused call rejects with an Error whose message is one sentence for the user.
 */
export class SessionClient {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  readonly #listeners = new Set<() => void>();
  readonly #states = new Map<CellName, CellState>();
  readonly #files = new Map<string, HandedFile>();
  #head = EMPTY_HEAD;
  #calls = 0;
  #fault = '';

  constructor(worker: Worker) {
    this.#worker = worker;
    worker.addEventListener('message', ({ data }: MessageEvent<TableReply>) => this.#receive(data));
    worker.addEventListener('error', (event) =>
      this.#fail(event.message || 'The worker that owns the tables stopped.'),
    );
  }

  get head(): NotebookHead {
    return this.#head;
  }

  get fault(): string {
    return this.#fault;
  }

  get title(): string {
    return this.#head.title;
  }

  get asOf(): string {
    return this.#head.asOf;
  }

  /** In the order of the notebook. */
  states(): readonly CellState[] {
    return this.#head.order.flatMap((name) => this.#states.get(name) ?? []);
  }

  canUndo(): boolean {
    return this.#head.undoSteps > 0;
  }

  canRedo(): boolean {
    return this.#head.redoSteps > 0;
  }

  /** Called after every change of head or states. Gives back how to stop listening. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Every file handed over so far, the last of each key. */
  files(): readonly HandedFile[] {
    return [...this.#files.values()];
  }

  openNotebook(fileName: string, text: string, files: readonly HandedFile[]): Promise<void> {
    this.#keep(files);
    return this.#call('openNotebook', fileName, text, files);
  }

  openReview(request: ReviewOfFiles, files: readonly HandedFile[]): Promise<void> {
    this.#keep(files);
    return this.#call('openReview', request, files);
  }

  addFiles(files: readonly HandedFile[]): Promise<void> {
    this.#keep(files);
    return this.#call('addFiles', files);
  }

  acceptFiles(keys: readonly string[]): Promise<void> {
    return this.#call('acceptFiles', keys);
  }

  edit(edit: Edit): Promise<void> {
    return this.#call('edit', edit);
  }

  setParameter(cell: CellName, parameter: string, value: unknown): Promise<void> {
    return this.edit({ operation: 'set-parameter', cell, parameter, value });
  }

  correct(cell: CellName, correction: Readonly<Record<string, unknown>>): Promise<void> {
    return this.edit({ operation: 'correct', cell, correction: { made_on: localDay(new Date()), ...correction } });
  }

  liftCorrection(cell: CellName, id: string, lifted: boolean): Promise<void> {
    return this.edit({ operation: 'lift-correction', cell, id, lifted });
  }

  setAsOf(day: string): Promise<void> {
    return this.edit({ operation: 'set-as-of', asOf: day });
  }

  /** Takes in another notebook of the same fleet; see TableCalls.merge. */
  merge(fileName: string, text: string, answers: MergeAnswers): Promise<readonly MergeConflict[]> {
    return this.#call('merge', fileName, text, answers);
  }

  compare(fileName: string, text: string): Promise<Comparison> {
    return this.#call('compare', fileName, text);
  }

  compareDays(from: string, to: string): Promise<Comparison> {
    return this.#call('compareDays', from, to);
  }

  readingKey(cell: CellName, range: RowRange, place: number, seen: SeenLine): Promise<RowKey> {
    return this.#call('readingKey', cell, range, place, seen);
  }

  words(cell: CellName, table: string, column: string): Promise<readonly string[]> {
    return this.#call('words', cell, table, column);
  }

  stop(): Promise<void> {
    return this.#call('stop');
  }

  goOn(): Promise<void> {
    return this.#call('goOn');
  }

  undo(): Promise<void> {
    return this.#call('undo');
  }

  redo(): Promise<void> {
    return this.#call('redo');
  }

  rows(cell: CellName, range: RowRange): Promise<RowPage> {
    return this.#call('rows', cell, range);
  }

  lanes(cell: CellName, units: readonly string[]): Promise<readonly UnitLanes[]> {
    return this.#call('lanes', cell, units);
  }

  working(place: NumberPlace): Promise<ShownWorking> {
    return this.#call('working', place);
  }

  why(cell: CellName): Promise<string> {
    return this.#call('why', cell);
  }

  documentText(): Promise<string> {
    return this.#call('documentText');
  }

  outputFiles(): Promise<readonly WrittenFile[]> {
    return this.#call('outputFiles');
  }

  settled(): Promise<void> {
    return this.#call('settled');
  }

  #call<Name extends CallName>(
    call: Name,
    ...given: Parameters<TableCalls[Name]>
  ): Promise<Awaited<ReturnType<TableCalls[Name]>>> {
    const id = ++this.#calls;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve: resolve as (value: unknown) => void, reject });
      this.#worker.postMessage({ id, call, arguments: given });
    });
  }

  #receive(reply: TableReply): void {
    if (reply.kind === 'news') {
      this.#head = reply.head;
      for (const state of reply.states) this.#states.set(state.name, state);
      for (const name of this.#states.keys()) if (!reply.head.order.includes(name)) this.#states.delete(name);
      for (const listener of this.#listeners) listener();
      return;
    }
    const waiting = this.#waiting.get(reply.id);
    this.#waiting.delete(reply.id);
    if (reply.kind === 'answer') waiting?.resolve(reply.value);
    else waiting?.reject(new Error(reply.message));
  }

  #keep(files: readonly HandedFile[]): void {
    for (const file of files) this.#files.set(file.key, file);
  }

  #fail(message: string): void {
    for (const { reject } of this.#waiting.values()) reject(new Error(message));
    this.#waiting.clear();
    this.#fault = message;
    for (const listener of this.#listeners) listener();
  }
}
