import type { CellKind, SourceFile } from '../../shared/cell.ts';
import type { CellState } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/notebook.ts';
import type { Outcome } from '../../shared/outcome.ts';
import { campusReview } from '../notebook/campus-review.ts';
import type { HelperPool } from '../notebook/crews/helper-pool.ts';
import type { DataReference, NotebookDocument } from '../notebook/document.ts';
import { embeddedFiles } from '../notebook/embedded-files.ts';
import { readDocument } from '../notebook/read-document.ts';
import { readingKey } from '../notebook/reading-key.ts';
import { Session } from '../notebook/session.ts';
import { writeDocument } from '../notebook/write-document.ts';
import { writtenFiles } from '../notebook/written-files.ts';
import { blobSource } from '../storage/blob-source.ts';
import { compareNotebooks, filesAtHand } from './compare-notebooks.ts';
import { mergeInto } from './merge-into.ts';
import type {
  CallName,
  Comparison,
  HandedFile,
  NotebookHead,
  TableCalls,
  TableReply,
  TableRequest,
} from './protocol.ts';
import { wordsOf } from './words-of.ts';

type Answers = { [Name in CallName]: (...given: Parameters<TableCalls[Name]>) => unknown };

/** Owns the open notebook and its tables, and answers the page. It runs in the worker and knows nothing of it. */
export class TableHost {
  readonly #session: Session;
  readonly #catalogue: ReadonlyMap<string, CellKind>;
  readonly #helpers: HelperPool | undefined;
  readonly #post: (reply: TableReply) => void;
  #files: ReadonlyMap<string, SourceFile> = new Map();
  #running: Promise<unknown> | undefined;
  #stopped = false;
  #told: NotebookDocument | undefined;
  #revision = 0;

  constructor(catalogue: ReadonlyMap<string, CellKind>, post: (reply: TableReply) => void, helpers?: HelperPool) {
    this.#post = post;
    this.#catalogue = catalogue;
    this.#helpers = helpers;
    this.#session = new Session(catalogue, { helpers });
    this.#session.onState((changed) => this.#tell(changed));
  }

  async receive({ id, call, arguments: given }: TableRequest): Promise<void> {
    try {
      const answer = this.#answers[call] as (...given: readonly unknown[]) => unknown;
      this.#post({ kind: 'answer', id, value: await answer(...given) });
    } catch (cause) {
      this.#post({ kind: 'refusal', id, message: cause instanceof Error ? cause.message : String(cause) });
    }
  }

  readonly #answers: Answers = {
    openNotebook: async (fileName, text, files) => {
      const document = accepted(readDocument(fileName, text));
      await this.#open(document, files);
    },
    openReview: async (request, files) => {
      const opened = await sourcesOf(files);
      await this.#take(campusReview({ ...request, data: references(opened) }), opened);
    },
    addFiles: async (files) => {
      const opened = await sourcesOf(files);
      const listed = new Map(this.#session.document().data.map((entry) => [entry.key, entry]));
      this.#files = new Map([...this.#files, ...opened]);
      this.#session.addFiles(opened);
      const unlisted = references(opened).filter(({ key }) => (listed.get(key)?.hash ?? '') === '');
      if (unlisted.length > 0) this.#listData(unlisted);
      this.#follow();
    },
    acceptFiles: (keys) => {
      this.#listData(references(this.#files).filter(({ key }) => keys.includes(key)));
      this.#follow();
    },
    edit: (edit) => this.#follow(this.#session.edit(edit)),
    merge: (fileName, text, answers) => {
      const merged = accepted(mergeInto(this.#session.document(), accepted(readDocument(fileName, text)), answers));
      if (merged.conflicts.length > 0) return merged.conflicts;
      if (merged.document !== this.#session.document()) this.#session.adopt(merged.document);
      this.#follow();
      return [];
    },
    compare: (fileName, text) => this.#compare(undefined, accepted(readDocument(fileName, text))),
    compareDays: async (from, to) => {
      const document = this.#session.document();
      const compared = await this.#compare({ ...document, as_of: from }, { ...document, as_of: to });
      // The day is the question, not a decision.
      return { ...compared, decided: [] };
    },
    readingKey: (cell, range, place, seen) => accepted(readingKey(this.#session, cell, range, place, seen)),
    words: (cell, table, column) => wordsOf(this.#session.result(cell)?.tables[table], column),
    stop: () => {
      this.#stopped = true;
      this.#session.stop();
      this.#tell([]);
    },
    goOn: () => this.#follow(),
    undo: () => this.#follow(this.#session.undo()),
    redo: () => this.#follow(this.#session.redo()),
    rows: (cell, range) => accepted(this.#session.rows(cell, range)),
    lanes: (cell, units) => this.#session.lanes(cell, units),
    working: async (place) => accepted(await this.#session.workingToFile(place)),
    why: (cell) => this.#session.why(cell),
    documentText: () => writeDocument(this.#session.document()),
    outputFiles: async () => {
      // Files are written of what is up to date only.
      if (this.#stopped) this.#calculate();
      await this.#settled();
      return writtenFiles(this.#session).map(({ name, cell, pieces }) => ({
        name,
        cell,
        blob: new Blob([...pieces()]),
      }));
    },
    settled: () => this.#settled(),
  };

  #listData(entries: readonly DataReference[]): void {
    // Where the notebook's own folder keeps a file is the notebook's to say, not the page's.
    const known = new Map(this.#session.document().data.map((entry) => [entry.key, entry.name]));
    const data = entries.map((entry) => ({ ...entry, name: known.get(entry.key) ?? entry.name }));
    accepted(this.#session.edit({ operation: 'add-data', data }));
  }

  #compare(before: NotebookDocument | undefined, after: NotebookDocument): Promise<Comparison> {
    const compared = (document: NotebookDocument) => ({ document, files: filesAtHand(document, this.#files) });
    const first = before ? compared(before) : { document: this.#session.document(), files: this.#files };
    return compareNotebooks(first, compared(after), this.#catalogue, { helpers: this.#helpers });
  }

  async #open(document: NotebookDocument, files: readonly HandedFile[]): Promise<void> {
    const opened = new Map([...(await embeddedFiles(document)), ...(await sourcesOf(files))]);
    await this.#take(document, opened);
  }

  async #take(document: NotebookDocument, files: ReadonlyMap<string, SourceFile>): Promise<void> {
    this.#files = files;
    this.#session.open(document, files);
    this.#calculate();
    this.#tell(this.#session.states());
  }

  #follow(edited?: Outcome<unknown>): void {
    if (edited) accepted(edited);
    this.#calculate();
    this.#tell([]);
  }

  #calculate(): void {
    this.#stopped = false;
    const running = this.#session.calculate().finally(() => {
      if (this.#running !== running) return;
      this.#running = undefined;
      this.#tell([]);
    });
    this.#running = running;
  }

  async #settled(): Promise<void> {
    while (this.#running) await this.#running;
  }

  #tell(states: readonly CellState[]): void {
    this.#post({ kind: 'news', head: this.#head(), states });
  }

  #head(): NotebookHead {
    const document = this.#session.document();
    if (document !== this.#told) this.#revision++;
    this.#told = document;
    const { title, as_of, cells, data } = document;
    const { back, forward } = this.#session.steps();
    return {
      title,
      asOf: as_of,
      order: cells.map(({ name }) => name),
      missing: data.map(({ key }) => key).filter((key) => !this.#files.has(key)),
      changed: data.flatMap(({ key, hash }) => {
        const file = this.#files.get(key);
        return file && hash !== '' && file.hash !== hash ? [key] : [];
      }),
      revision: this.#revision,
      undoSteps: back,
      redoSteps: forward,
      busy: this.#running !== undefined,
      stopped: this.#stopped,
    };
  }
}

async function sourcesOf(files: readonly HandedFile[]): Promise<Map<string, SourceFile>> {
  const opened = new Map<string, SourceFile>();
  // Results name a file as the notebook does, whatever it is called on this machine.
  for (const { key, blob } of files) opened.set(key, await blobSource(key, blob));
  return opened;
}

function references(files: ReadonlyMap<string, SourceFile>): DataReference[] {
  return [...files].map(([key, { name, size, hash }]) => ({ key, name, size, hash }));
}

function accepted<T>(outcome: Outcome<T>): T {
  if (outcome.status === 'value') return outcome.value;
  throw new Error(
    outcome.status === 'error' ? outcome.message : say.asks(outcome.question.message, outcome.question.remedy),
  );
}
