import type { RowPage, RowRange } from '../../shared/cell-state.ts';
import type { Column } from '../../shared/table/table.ts';

export const PAGE_ROWS = 200;
/** Pages kept; a page of 40 columns is about 64 kB. */
const KEPT_PAGES = 40;

export interface FoundRow {
  readonly columns: ReadonlyMap<string, Column>;
  /** Index within the columns. */
  readonly index: number;
  /** Number of the row in the whole table, whatever its order here. */
  readonly row: number;
}

/** The pages of one table in one order, fetched when first looked at; the least recently used go first. */
export class SheetPages {
  readonly #fetch: (range: { from: number; to: number }) => Promise<RowPage>;
  readonly #arrived: () => void;
  readonly #pages = new Map<number, RowPage | 'under way'>();
  #dropped = false;
  total: number | undefined;

  constructor(fetch: (range: Pick<RowRange, 'from' | 'to'>) => Promise<RowPage>, arrived: () => void) {
    this.#fetch = fetch;
    this.#arrived = arrived;
  }

  /** The row where it is at hand; asks for its page where it is not. */
  row(row: number): FoundRow | undefined {
    const number = Math.floor(row / PAGE_ROWS);
    const page = this.#pages.get(number);
    if (page === undefined) this.#ask(number);
    if (page === undefined || page === 'under way') return undefined;
    this.#pages.delete(number);
    this.#pages.set(number, page);
    return rowOf(page, row);
  }

  /** The row where it is at hand; asks for nothing. */
  peek(row: number): FoundRow | undefined {
    const page = this.#pages.get(Math.floor(row / PAGE_ROWS));
    return page === undefined || page === 'under way' ? undefined : rowOf(page, row);
  }

  /** Answers that arrive after this are ignored. */
  drop(): void {
    this.#dropped = true;
  }

  async #ask(number: number): Promise<void> {
    this.#pages.set(number, 'under way');
    try {
      const page = await this.#fetch({ from: number * PAGE_ROWS, to: (number + 1) * PAGE_ROWS });
      if (this.#dropped) return;
      this.#pages.set(number, page);
      this.total = page.total;
      for (const oldest of this.#pages.keys()) {
        if (this.#pages.size <= KEPT_PAGES) break;
        this.#pages.delete(oldest);
      }
    } catch {
      // The cell was calculated anew or taken away meanwhile; its next version asks again.
      this.#pages.delete(number);
      return;
    }
    this.#arrived();
  }
}

/** A table may have been longer or shorter when its page was fetched than it is where it is drawn. */
function rowOf(page: RowPage, row: number): FoundRow | undefined {
  const index = row - page.from;
  return row < page.total ? { columns: page.columns, index, row: page.rows?.[index] ?? row } : undefined;
}
