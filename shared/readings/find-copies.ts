import type { FilePlan } from './mapping.ts';
import { printedSteps } from './printed-steps.ts';
import type { ReadingColumns } from './reading-columns.ts';
import { rowOrigin } from './row-origin.ts';

/** Values that may be known in one copy only; less than this many in common are a coincidence. */
const LEAST_IN_COMMON = 3;
/** More readings of one unit on one day are a log, in which nothing is looked for. */
const MOST_A_DAY = 2000;
/** Differences that come from calculating with binary numbers, as a share. */
const ROUNDING = 1e-9;

/**
 * Finds a reading that two exports both hold, in other units, with other rounding or with fewer columns: the same unit,
 * minute (or day, where one copy gives no time), fire and state (one may leave it unknown), and every value that both
 * know equal within their printed digits. Pairs are [copy, of]: the copy that knows less, whatever the order of the files.
 * `order` is that of sortRows; rows in `taken` are left out.
 */
export function findCopies(
  columns: ReadingColumns,
  plans: readonly FilePlan[],
  order: Int32Array,
  taken: ReadonlySet<number>,
): (readonly [copy: number, of: number])[] {
  if (columns.files.length < 2) return [];
  const units = columns.texts.get('unit')?.codes ?? new Int32Array(0);
  const days = columns.numbers.get('taken_at')!.values;
  const found: (readonly [number, number])[] = [];
  const matcher = new CopyMatcher(columns, plans);
  for (let from = 0; from < order.length; ) {
    const first = order[from];
    const day = Math.floor(days[first]);
    let to = from + 1;
    while (to < order.length && units[order[to]] === units[first] && Math.floor(days[order[to]]) === day) to++;
    if (to - from > 1 && to - from <= MOST_A_DAY)
      found.push(...matcher.among(Array.from(order.subarray(from, to)).filter((row) => !taken.has(row))));
    from = to;
  }
  return found;
}

class CopyMatcher {
  readonly #columns: ReadingColumns;
  readonly #stepOf: (field: string, file: number) => number;
  readonly #origin: ReturnType<typeof rowOrigin>;

  constructor(columns: ReadingColumns, plans: readonly FilePlan[]) {
    this.#columns = columns;
    this.#stepOf = printedSteps(columns, plans);
    this.#origin = rowOrigin(columns);
  }

  /** Rows of one unit and day. The fullest are looked at first, so that each copy is named after the fullest one. */
  among(rows: readonly number[]): (readonly [number, number])[] {
    const files = new Set(rows.map((row) => this.#columns.fileOf(row)));
    if (files.size < 2) return [];
    const known = new Map(rows.map((row) => [row, this.#known(row)]));
    const fullest = [...rows].sort((a, b) => (known.get(b) ?? 0) - (known.get(a) ?? 0) || this.#origin(a, b));
    const kept: number[] = [];
    const found: (readonly [number, number])[] = [];
    /** One row of each other file at most is a copy of a kept one. */
    const copied = new Set<string>();
    for (const row of fullest) {
      const file = this.#columns.fileOf(row);
      const of = kept.find((other) => !copied.has(`${other} ${file}`) && this.#isCopy(row, other));
      if (of === undefined) kept.push(row);
      else {
        copied.add(`${of} ${file}`);
        found.push([row, of]);
      }
    }
    return found;
  }

  #isCopy(a: number, b: number): boolean {
    const columns = this.#columns;
    if (columns.fileOf(a) === columns.fileOf(b)) return false;
    const taken = columns.numbers.get('taken_at')!.values;
    const dateOnly = Number.isInteger(taken[a]) || Number.isInteger(taken[b]);
    if (!dateOnly && Math.abs(taken[a] - taken[b]) > 1e-7 && minute(taken[a]) !== minute(taken[b])) return false;
    if (this.#text('fire', a) !== this.#text('fire', b)) return false;
    for (const name of ['state', 'fuel', 'analyzer', 'adjusted']) {
      const [left, right] = [this.#text(name, a), this.#text(name, b)];
      if (left !== '' && right !== '' && left !== right) return false;
    }
    return this.#sameValues(a, b);
  }

  #sameValues(a: number, b: number): boolean {
    let common = 0;
    for (const [name, column] of this.#columns.numbers) {
      const [x, y] = [column.get(a), column.get(b)];
      if (name === 'taken_at' || Number.isNaN(x) || Number.isNaN(y)) continue;
      if (column.boundAt(a) !== column.boundAt(b) || Math.abs(x - y) > this.#tolerance(name, a, b, x)) return false;
      common++;
    }
    return common >= LEAST_IN_COMMON;
  }

  /** Half of the coarser printed step, and half of the finer one too, since both were rounded; the same step means the same number. */
  #tolerance(field: string, a: number, b: number, value: number): number {
    const [one, other] = [a, b].map((row) => this.#stepOf(field, this.#columns.fileOf(row)));
    const slack = ROUNDING * Math.max(1, Math.abs(value));
    return Math.abs(one - other) <= ROUNDING * one ? slack : (one + other) / 2 + slack;
  }

  #text(name: string, row: number): string {
    const text = this.#columns.texts.get(name)?.text(row) ?? '';
    return (name === 'fire' && text === 'unnamed') || text === 'unknown' ? '' : text;
  }

  /** How much a row tells. One that knows CO is never given up for one that does not. */
  #known(row: number): number {
    let known = 0;
    for (const [name, column] of this.#columns.numbers)
      if (!Number.isNaN(column.get(row))) known += name === 'co_ppm' || name === 'co_air_free_ppm' ? 100 : 1;
    for (const name of this.#columns.texts.keys()) if (this.#text(name, row) !== '') known++;
    return known + (Number.isInteger(this.#columns.numbers.get('taken_at')?.get(row)) ? 0 : 1);
  }
}

/** Dates are days since 1970. */
const minute = (day: number): number => Math.floor(day * 1440 + 1e-4);
