import type { KeptContent, KeptFile, KeptNotebook, KeptStore } from '../../storage/kept-store.ts';
import type { PageSession } from '../page-session.ts';
import { holdNotebook, notebooksHeld } from './tab-locks.ts';

/** A change is kept this long after it; more of them within it are kept once. */
const AFTER_MS = 500;
/** Data files are kept up to so many bytes a notebook; a larger one is asked for again. */
const MOST_BYTES = 64 * 2 ** 20;

interface Open {
  readonly id: string;
  readonly session: PageSession;
  readonly letGo: () => void;
  edited: boolean;
  saved: boolean;
  /** Stamp of what was kept last, '' for nothing. */
  keptAs: string;
  readonly filesKept: Map<string, KeptFile & { readonly blob: Blob }>;
}

/** Keeps the open notebook in the browser, so that neither a reload nor a crash loses anything. */
export class NotebookKeeper {
  readonly #store: KeptStore;
  /** Told of the cause when the browser keeps nothing; of undefined when it does again. */
  readonly #onFault: (cause: string | undefined) => void;
  #open: Open | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> = Promise.resolve();

  constructor(store: KeptStore, onFault: (cause: string | undefined) => void) {
    this.#store = store;
    this.#onFault = onFault;
  }

  /** True while the last change is not kept yet. */
  get isBehind(): boolean {
    return this.#timer !== undefined;
  }

  /** Begins to keep another notebook. One that is only looked at, and not the user's own, is kept from its first change. */
  begin(session: PageSession, { isOwn, kept }: { isOwn: boolean; kept: KeptNotebook | undefined }): void {
    void this.flush();
    this.#open?.letGo();
    const id = kept?.id ?? crypto.randomUUID();
    const open: Open = {
      id,
      session,
      letGo: holdNotebook(id),
      edited: kept?.edited ?? false,
      saved: kept?.saved ?? false,
      keptAs: isOwn && !kept ? '' : stampOf(session),
      filesKept: new Map(),
    };
    this.#open = open;
    if (kept) for (const file of session.files()) open.filesKept.set(file.key, keptFile(file, true));
    this.note();
  }

  /** To be called after every change of the session; news of results alone are told apart and cost nothing. */
  note(): void {
    if (!this.#open || stampOf(this.#open.session) === this.#open.keptAs) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), AFTER_MS);
  }

  /** Keeps now what is not kept yet. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const open = this.#open;
    if (open && stampOf(open.session) !== open.keptAs)
      this.#writing = this.#writing.then(() => this.#keep(open)).catch((cause) => this.#onFault(String(cause)));
    return this.#writing;
  }

  /** The notebook was saved as a file. */
  async saved(): Promise<void> {
    const open = this.#open;
    if (!open) return;
    await this.flush();
    open.saved = true;
    await this.#keep(open).catch((cause) => this.#onFault(String(cause)));
  }

  /** What is kept and open in no tab. */
  async offers(): Promise<readonly KeptNotebook[]> {
    try {
      const [all, isHeld] = [await this.#store.list(), await notebooksHeld()];
      return all.filter(({ id }) => id !== this.#open?.id && !isHeld(id));
    } catch (cause) {
      this.#onFault(String(cause));
      return [];
    }
  }

  read(kept: KeptNotebook): Promise<KeptContent | undefined> {
    return this.#store.read(kept);
  }

  drop({ id }: KeptNotebook): Promise<void> {
    return this.#store.drop(id);
  }

  async #keep(open: Open): Promise<void> {
    const stamp = stampOf(open.session);
    const isFirst = open.keptAs === '';
    if (!isFirst && stamp !== open.keptAs) {
      open.edited = true;
      open.saved = false;
    }
    const text = await open.session.documentText();
    const files = await this.#keepFiles(open);
    const { id, edited, saved, session } = open;
    await this.#store.putText({ id, title: session.title, changedAt: Date.now(), edited, saved, files }, text);
    open.keptAs = stamp;
    this.#onFault(undefined);
    await this.#letOldGo();
  }

  async #keepFiles(open: Open): Promise<KeptFile[]> {
    let left = MOST_BYTES;
    for (const file of open.session.files()) {
      const before = open.filesKept.get(file.key);
      left -= file.blob.size;
      if (before?.blob === file.blob) continue;
      const isKept = left >= 0;
      if (isKept) await this.#store.putFile(open.id, file.key, file.blob);
      open.filesKept.set(file.key, keptFile(file, isKept));
    }
    return [...open.filesKept.values()].map(({ blob: _, ...file }) => file);
  }

  /** What was never changed, or was saved since, makes room for the next; what was decided stays until it is dropped. */
  async #letOldGo(): Promise<void> {
    for (const kept of await this.offers()) if (!kept.edited || kept.saved) await this.drop(kept);
  }
}

const keptFile = ({ key, name, blob }: { key: string; name: string; blob: Blob }, isKept: boolean) => ({
  key,
  name,
  size: blob.size,
  isKept,
  blob,
});

/** Other text, other notebook or other files at hand: something to keep. Results and progress are none. */
function stampOf(session: PageSession): string {
  return `${session.head.revision} ${session
    .files()
    .map(({ key, blob }) => `${key} ${blob.size}`)
    .join()}`;
}
