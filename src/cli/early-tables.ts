import type { CellResult } from '../../shared/cell.ts';
import type { Table } from '../../shared/table/table.ts';
import type { Session } from '../notebook/session.ts';
import type { OutFolder } from './out-folder.ts';
import type { Scribe } from './table-scribe.ts';

/** Below this many cells a table is written sooner than it is copied to another thread. */
const LEAST_CELLS = 500_000;

interface Early {
  readonly result: CellResult | undefined;
  readonly path: string;
  readonly written: Promise<void>;
}

/**
 * Large tables go to the scribe as soon as their cell has its result, while the cells after it are still at work. What was
 * written of a result that has been calculated anew meanwhile is not used.
 */
export class EarlyTables {
  readonly #session: Session;
  readonly #out: OutFolder;
  readonly #scribe: () => Scribe;
  readonly #early = new Map<string, Early>();
  readonly #stop: () => void;

  constructor(session: Session, out: OutFolder, scribe: () => Scribe) {
    this.#session = session;
    this.#out = out;
    this.#scribe = scribe;
    this.#stop = session.onState(() => this.#look());
  }

  /** Where the file of this cell is, or is being, written already. */
  find(cell: string, file: string): { readonly path: string; readonly written: Promise<void> } | undefined {
    const early = this.#early.get(keyOf(cell, file));
    return early && early.result === this.#session.result(cell) ? early : undefined;
  }

  /** No more tables are taken up. */
  stop(): void {
    this.#stop();
  }

  /** No more tables are taken up; settles when none is being written. */
  async end(): Promise<void> {
    this.#stop();
    await Promise.allSettled([...this.#early.values()].map(({ written }) => written));
  }

  #look(): void {
    for (const file of this.#session.outputFiles()) {
      if (!('table' in file) || !isLarge(file.table)) continue;
      const key = keyOf(file.cell, file.name);
      const result = this.#session.result(file.cell);
      if (this.#early.get(key)?.result === result) continue;
      const path = this.#out.early(`${this.#early.size}`);
      this.#early.set(key, { result, path, written: this.#scribe().write(path, file.table) });
    }
  }
}

const keyOf = (cell: string, file: string): string => `${cell}\n${file}`;
const isLarge = ({ rows, columns }: Table): boolean => rows * columns.size >= LEAST_CELLS;
