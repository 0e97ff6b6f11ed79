import { createStore, delMany, get, getMany, keys, set, setMany, type UseStore } from 'idb-keyval';

/** A notebook as the browser keeps it; its text and its data files lie beside it. */
export interface KeptNotebook {
  readonly id: string;
  readonly title: string;
  /** When it last changed, ms since 1970. */
  readonly changedAt: number;
  /** Something was decided in it, so that it is never let go unasked. */
  readonly edited: boolean;
  /** It was saved as a file since its last change. */
  readonly saved: boolean;
  readonly files: readonly KeptFile[];
}

export interface KeptFile {
  readonly key: string;
  readonly name: string;
  readonly size: number;
  /** False for a file too large to keep: it is asked for again. */
  readonly isKept: boolean;
}

export interface KeptContent {
  readonly text: string;
  readonly files: readonly { readonly key: string; readonly name: string; readonly blob: Blob }[];
}

/** Notebooks in the browser's own database. Every method may reject where the browser keeps nothing for this page. */
export class KeptStore {
  #store: UseStore | undefined;

  get #opened(): UseStore {
    this.#store ??= createStore('between-visits', 'kept');
    return this.#store;
  }

  /** The latest first. */
  async list(): Promise<KeptNotebook[]> {
    const names = (await keys<string>(this.#opened)).filter((key) => key.startsWith('head '));
    const heads = await getMany<KeptNotebook | undefined>(names, this.#opened);
    return heads.filter((head) => head !== undefined).sort((a, b) => b.changedAt - a.changedAt);
  }

  async putText(head: KeptNotebook, text: string): Promise<void> {
    // Both or neither: a head without its text would offer what is not there.
    await setMany(
      [
        [`text ${head.id}`, text],
        [`head ${head.id}`, head],
      ],
      this.#opened,
    );
  }

  async putFile(id: string, key: string, blob: Blob): Promise<void> {
    await set(fileKey(id, key), blob, this.#opened);
  }

  async read(head: KeptNotebook): Promise<KeptContent | undefined> {
    const text = await get<string>(`text ${head.id}`, this.#opened);
    if (text === undefined) return undefined;
    const files: { key: string; name: string; blob: Blob }[] = [];
    for (const { key, name, isKept } of head.files) {
      const blob = isKept ? await get<Blob>(fileKey(head.id, key), this.#opened) : undefined;
      if (blob) files.push({ key, name, blob });
    }
    return { text, files };
  }

  async drop(id: string): Promise<void> {
    const names = await keys<string>(this.#opened);
    const files = names.filter((key) => key.startsWith(`file ${id} `));
    await delMany([`head ${id}`, `text ${id}`, ...files], this.#opened);
  }
}

const fileKey = (id: string, key: string): string => `file ${id} ${key}`;
