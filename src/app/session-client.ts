import type { CellName } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import type { Edit } from '../notebook/edit.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import type {
  CallName,
  HandedFile,
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
  notices: [],
  undoSteps: 0,
  redoSteps: 0,
  busy: false,
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
  #head = EMPTY_HEAD;
  #calls = 0;

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

  openNotebook(fileName: string, text: string, files: readonly HandedFile[]): Promise<void> {
    return this.#call('openNotebook', fileName, text, files);
  }

  openReview(request: ReviewOfFiles, files: readonly HandedFile[]): Promise<void> {
    return this.#call('openReview', request, files);
  }

  addFiles(files: readonly HandedFile[]): Promise<void> {
    return this.#call('addFiles', files);
  }

  edit(edit: Edit): Promise<void> {
    return this.#call('edit', edit);
  }

  setParameter(cell: CellName, parameter: string, value: unknown): Promise<void> {
    return this.edit({ operation: 'set-parameter', cell, parameter, value });
  }

  setAsOf(day: string): Promise<void> {
    return this.edit({ operation: 'set-as-of', asOf: day });
  }

  /** Takes in another notebook of the same fleet; see TableCalls.merge. */
  merge(fileName: string, text: string, keep?: 'first' | 'second'): Promise<readonly string[]> {
    return this.#call('merge', fileName, text, keep);
  }

  compare(fileName: string, text: string): Promise<readonly string[]> {
    return this.#call('compare', fileName, text);
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
  working(place: NumberPlace): Promise<ShownWorking> {
    return this.#call('working', place);
  }

  }

  #fail(message: string): void {
    for (const { reject } of this.#waiting.values()) reject(new Error(message));
    this.#waiting.clear();
  }
}
