import type { CellKind, CellName, CellResult, OutputFile, SourceFile, SourceKey } from '../../shared/cell.ts';
import type { CellState, RowPage, RowRange } from '../../shared/cell-state.ts';
import type { UnitLanes } from '../../shared/lanes/lane.ts';
import * as say from '../../shared/messages/notebook.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import type { ShownWorking } from '../../shared/working/shown-working.ts';
import type { NumberPlace } from '../../shared/working/working.ts';
import { Graph } from '../engine/graph.ts';
import type { StoreAccount } from '../engine/store.ts';
import { applyEdit } from './apply-edit.ts';
import { canonicalJson } from './canonical-json.ts';
import { cellNodes, cellOfNode, fitNode, type PreparedCell, prepareCell } from './cell-nodes.ts';
import { cellState, type DescribedResult } from './cell-states.ts';
import type { HelperPool } from './crews/helper-pool.ts';
import type { NotebookDocument } from './document.ts';
import type { Edit } from './edit.ts';
import { advance, beginHistory, type History, stepBack, stepForward } from './history.ts';
import { onlyTables, resultVersions } from './result-versions.ts';
import { rowPage } from './row-page.ts';
import { showWorking, type WorkingHost, withOrigins } from './show-working.ts';

/** States are gathered this long, so that a change that is done sooner is drawn once and not on the way. */
const GATHER_MS = 50;

export type StateListener = (changed: readonly CellState[]) => void;

/** A file that a cell wrote, with the cell's name. */
export type CellOutputFile = OutputFile & { readonly cell: CellName };

export interface SessionOptions {
  /** Helper workers for heavy cells; without them everything is calculated here, to the same bytes. */
  readonly helpers?: HelperPool | undefined;
  /** Most bytes that kept results may take. */
  readonly limitBytes?: number;
}

/**
 * An open notebook: its document, its data files and its results. Editing and calculating are apart: edits take effect in
 * the document at once, in the results with the next calculate(), which supersedes one that is still running.
 */
export class Session {
  readonly #catalogue: ReadonlyMap<string, CellKind>;
  readonly #helpers: HelperPool | undefined;
  readonly #graph: Graph<CellResult>;
  readonly #listeners = new Set<StateListener>();
  readonly #described = new Map<CellName, DescribedResult>();
  #files: ReadonlyMap<SourceKey, SourceFile> = new Map();
  #history: History<NotebookDocument> | undefined;
  #cells: ReadonlyMap<CellName, PreparedCell> = new Map();
  /** The cells as they were when last calculated to the end, and the parameters that changed since. */
  #calculated: ReadonlyMap<CellName, PreparedCell> = new Map();
  #changedParameters: ReadonlyMap<CellName, readonly string[]> = new Map();
  #changed = new Set<CellName>();
  /** Cells that a stopped calculation did not come to. */
  #left: ReadonlySet<CellName> = new Set();
  #telling: ReturnType<typeof setTimeout> | undefined;

  constructor(catalogue: ReadonlyMap<string, CellKind>, { helpers, limitBytes = 768 * 2 ** 20 }: SessionOptions = {}) {
    this.#catalogue = catalogue;
    this.#helpers = helpers;
    this.#graph = new Graph({
      versions: resultVersions,
      restrict: onlyTables,
      limitBytes,
      onChange: (id) => this.#note(cellOfNode(id)),
    });
  }

  /** Takes a document and the files its data list names; nothing is calculated yet. */
  open(document: NotebookDocument, files: ReadonlyMap<SourceKey, SourceFile>): void {
    this.#files = files;
    this.#history = beginHistory(document);
    this.#define();
  }

  /** Adds data files, or replaces those of the same key. */
  addFiles(files: ReadonlyMap<SourceKey, SourceFile>): void {
    this.#files = new Map([...this.#files, ...files]);
    this.#define();
  }

  /** Brings every cell up to date; 'superseded' when a newer change or calculation took over. */
  async calculate(): Promise<'finished' | 'superseded'> {
    const cells = this.#cells;
    this.#leave(new Set());
    this.#changedParameters = new Map(
      [...cells].map(([name, cell]) => [name, changedParameters(this.#calculated.get(name), cell)]),
    );
    const end = await this.#graph.calculate();
    if (end === 'finished') {
      this.#calculated = cells;
      this.#tell();
    }
    return end;
  }

  /** Ends the running calculation. What it did not come to is stale until calculate() is called again. */
  stop(): void {
    this.#graph.stop();
    this.#leave(new Set([...this.#graph.pending()].map(cellOfNode)));
  }

  /** The new document, or one sentence why the edit cannot be made. */
  edit(edit: Edit): Outcome<NotebookDocument> {
    const history = this.#open();
    const edited = applyEdit(history.present, edit, this.#catalogue);
    if (edited.status === 'value' && edited.value !== history.present) this.#go(advance(history, edited.value));
    return edited;
  }

  setParameter(cell: CellName, parameter: string, value: unknown): Outcome<NotebookDocument> {
    return this.edit({ operation: 'set-parameter', cell, parameter, value });
  }

  /** Takes another document in the place of this one, as a step that can be undone: a merged one, for instance. */
  adopt(document: NotebookDocument): void {
    this.#go(advance(this.#open(), document));
  }

  undo(): Outcome<NotebookDocument> {
    const before = stepBack(this.#open());
    return before ? this.#go(before) : fail(say.nothingToUndo());
  }

  redo(): Outcome<NotebookDocument> {
    const next = stepForward(this.#open());
    return next ? this.#go(next) : fail(say.nothingToRedo());
  }

  /** How many steps can be undone and done again. */
  steps(): { readonly back: number; readonly forward: number } {
    const { past, future } = this.#open();
    return { back: past.length, forward: future.length };
  }

  document(): NotebookDocument {
    return this.#open().present;
  }

  /** Every cell in the order of the notebook. */
  states(): readonly CellState[] {
    return [...this.#cells.keys()].map((name) => this.#state(name));
  }

  state(cell: CellName): CellState | undefined {
    return this.#cells.has(cell) ? this.#state(cell) : undefined;
  }

  /** Tells of changed cells, gathered over some milliseconds. Returns the function that ends it. */
  onState(listener: StateListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  rows(cell: CellName, range: RowRange): Outcome<RowPage> {
    const result = this.result(cell);
    if (!result) return fail(say.noResult(cell));
    const table = Object.hasOwn(result.tables, range.table) ? result.tables[range.table] : undefined;
    return table ? succeed(rowPage(table, range)) : fail(say.noSuchTable(cell, range.table));
  }

  lanes(cell: CellName, units: readonly string[]): readonly UnitLanes[] {
    const result = this.result(cell);
    return (result && this.#cells.get(cell)?.kind?.lanes?.(result, units)) ?? [];
  }

  /** How one number of a cell came about, down to the file and line of its readings. */
  working(place: NumberPlace): Outcome<ShownWorking> {
    return showWorking(place, this.#workingHost());
  }

  /** The same with the lines as the files hold them. */
  async workingToFile(place: NumberPlace): Promise<Outcome<ShownWorking>> {
    const found = this.working(place);
    return found.status === 'value' ? succeed(await withOrigins(found.value, this.#workingHost())) : found;
  }

  /** One sentence: why the cell was, or was not, calculated again. */
  why(cell: CellName): string {
    return this.state(cell)?.why ?? say.noSuchCell(cell);
  }

  /** The last good result; undefined where there is none. */
  result(cell: CellName): CellResult | undefined {
    return this.#graph.state(cell)?.value;
  }

  /** The files of every cell that is up to date. */
  outputFiles(): readonly CellOutputFile[] {
    return [...this.#cells].flatMap(([cell, { kind }]) => {
      const state = this.#graph.state(cell);
      if (state?.phase !== 'done' || !state.value) return [];
      return (kind?.files?.(state.value) ?? []).map((file) => ({ ...file, cell }));
    });
  }

  /** Whether the cell reads data files of its own, so that its failure is the file's. */
  importsFiles(cell: CellName): boolean {
    const { kind, fault, parameters } = this.#cells.get(cell) ?? {};
    return kind !== undefined && !fault && kind.sources(parameters).length > 0;
  }

  /** Why the cell cannot even be begun (an unknown kind, bad parameters), '' where it can. */
  fault(cell: CellName): string {
    return this.#cells.get(cell)?.fault ?? '';
  }

  store(): StoreAccount {
    return this.#graph.store();
  }

  #workingHost(): WorkingHost {
    const cells = [...this.#cells].flatMap(([name, { kind, fault, reads }]) =>
      kind && !fault ? [[name, { kind, result: this.result(name), reads }] as const] : [],
    );
    return { cells: new Map(cells), files: this.#files };
  }

  #open(): History<NotebookDocument> {
    if (!this.#history) throw new Error('a session is used before a notebook is opened');
    return this.#history;
  }

  #go(history: History<NotebookDocument>): Outcome<NotebookDocument> {
    this.#history = history;
    this.#define();
    return succeed(history.present);
  }

  #define(): void {
    const document = this.#open().present;
    const host = { catalogue: this.#catalogue, files: this.#files, helpers: this.#helpers };
    const before = this.#cells;
    this.#cells = new Map(
      document.cells.map((entry) => [entry.name, reuse(before.get(entry.name), entry) ?? prepareCell(entry, host)]),
    );
    this.#graph.define(cellNodes(document, [...this.#cells.values()], host));
    for (const name of this.#described.keys()) if (!this.#cells.has(name)) this.#described.delete(name);
    for (const [name, cell] of this.#cells) if (before.get(name) !== cell) this.#note(name);
  }

  #state(name: CellName): CellState {
    const cell = this.#cells.get(name) as PreparedCell;
    const judged = this.#graph.state(name);
    const fitted = cell.kind?.fit ? this.#graph.state(fitNode(name)) : undefined;
    const changes = this.#changedParameters.get(name) ?? [];
    const made = cellState(cell, judged, fitted, this.#described.get(name), changes);
    if (made.described) this.#described.set(name, made.described);
    return this.#left.has(name) && made.described ? { ...made.state, stale: true } : made.state;
  }

  #leave(cells: ReadonlySet<CellName>): void {
    const before = this.#left;
    this.#left = cells;
    for (const name of new Set([...before, ...cells])) this.#note(name);
  }

  #note(cell: CellName): void {
    this.#changed.add(cell);
    if (this.#listeners.size > 0) this.#telling ??= setTimeout(() => this.#tell(), GATHER_MS);
  }

  #tell(): void {
    clearTimeout(this.#telling);
    this.#telling = undefined;
    const names = [...this.#changed].filter((name) => this.#cells.has(name));
    this.#changed = new Set();
    if (names.length === 0) return;
    const states = names.map((name) => this.#state(name));
    for (const listener of this.#listeners) listener(states);
  }
}

function changedParameters(before: PreparedCell | undefined, after: PreparedCell): readonly string[] {
  if (!before || before === after) return [];
  const [old, now] = [before, after].map(({ parameters }) => (parameters ?? {}) as Readonly<Record<string, unknown>>);
  return Object.keys(now).filter((name) => canonicalJson(old[name]) !== canonicalJson(now[name]));
}

function reuse(before: PreparedCell | undefined, entry: NotebookDocument['cells'][number]): PreparedCell | undefined {
  return before?.entry === entry ? before : undefined;
}
