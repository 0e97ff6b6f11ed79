import { Worker } from 'node:worker_threads';
import type { Table } from '../../shared/table/table.ts';
import type { ScribeAnswer, ScribeOrder } from './serve-scribe.ts';

/** What the thread's workerData holds, so that the file it runs knows its part. */
export const SCRIBE = 'scribe';

/** Whoever writes tables as CSV beside the calculation. */
export interface Scribe {
  /** Settles when the file is on disk; rejects with a `code` as the file system gives it. */
  write(path: string, table: Table): Promise<void>;
}

/** A thread that writes large tables as CSV while the cells after them are still calculated. */
export class TableScribe implements Scribe {
  readonly #thread: Worker;
  readonly #open = new Map<string, { resolve(): void; reject(cause: unknown): void }>();

  /** @param file the file that serves a scribe when it finds itself in a thread with SCRIBE as its data */
  constructor(file: string) {
    this.#thread = new Worker(file, { workerData: SCRIBE });
    this.#thread.unref();
    this.#thread.on('message', (answer: ScribeAnswer) => this.#take(answer));
    this.#thread.on('error', (cause) => {
      for (const { reject } of this.#open.values()) reject(cause);
      this.#open.clear();
    });
  }

  /** Copies the table to the thread. */
  write(path: string, table: Table): Promise<void> {
    this.#thread.ref();
    const done = new Promise<void>((resolve, reject) => this.#open.set(path, { resolve, reject }));
    // Whoever discards the folder never asks; that is no unhandled fault.
    done.catch(() => {});
    this.#thread.postMessage({ path, table } satisfies ScribeOrder);
    return done;
  }

  async end(): Promise<void> {
    await this.#thread.terminate();
  }

  #take({ path, fault, code }: ScribeAnswer): void {
    const asked = this.#open.get(path);
    this.#open.delete(path);
    if (this.#open.size === 0) this.#thread.unref();
    if (fault === undefined) asked?.resolve();
    else asked?.reject(Object.assign(new Error(fault), { code }));
  }
}
