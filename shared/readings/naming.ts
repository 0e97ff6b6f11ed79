import { GrowingTexts } from './growing-columns.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { keptText } from './word-meaning.ts';

/** What evidence can name where a file does not. */
export const NAMINGS = ['fires', 'states', 'fuels'] as const;
export type NamingKind = (typeof NAMINGS)[number];

const COLUMN: Readonly<Record<NamingKind, string>> = { fires: 'fire', states: 'state', fuels: 'fuel' };

/** What evidence says of readings of one unit that do not say it themselves. A proposal, until someone accepts it. */
export interface Naming {
  readonly kind: NamingKind;
  readonly unit: string;
  /** How many would be named, and how: 'high 12, low 12'. */
  readonly readings: number;
  readonly wouldBe: string;
  /** The one that stands first in the files; -1 for none. */
  readonly firstRow: number;
  /** One clause with the numbers. */
  readonly evidence: string;
  /** Calls back with every row and the word for it. */
  eachRow(write: (row: number, word: string) => void): void;
}

/** The naming of listed rows, each with its word. */
export function namingOf(
  kind: NamingKind,
  unit: string,
  rows: readonly number[],
  words: readonly string[],
  evidence: string,
): Naming {
  return {
    kind,
    unit,
    readings: rows.length,
    wouldBe: tally(words),
    firstRow: rows.reduce((least, row) => Math.min(least, row), rows[0] ?? -1),
    evidence,
    eachRow: (write) => {
      for (let i = 0; i < rows.length; i++) write(rows[i], words[i]);
    },
  };
}

/** 'high 12, low 12'. */
function tally(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return tallyOf(counts);
}

/** The same of words that are counted already. */
export function tallyOf(counts: ReadonlyMap<string, number>): string {
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([word, count]) => `${word.replaceAll('_', ' ')} ${count}`)
    .join(', ');
}

/** What is accepted: a kind for all units ('fires') or for one ('fires:B-07'). */
export function isAccepted({ kind, unit }: Pick<Naming, 'kind' | 'unit'>, accept: readonly string[]): boolean {
  return accept.length > 0 && (accept.includes(kind) || accept.includes(`${kind}:${unit}`));
}

/** Writes the words into the rows. */
export function applyNaming(columns: ReadingColumns, naming: Naming): void {
  const name = COLUMN[naming.kind];
  const column = columns.texts.get(name) ?? new GrowingTexts(keptText);
  columns.texts.set(name, column);
  column.ensure(columns.rows, columns.rows);
  naming.eachRow((row, word) => {
    column.codes[row] = column.codeOfCanonical(word);
  });
}

/** The rows of each unit; `order` is that of sortRows, which holds accepted rows only. */
export function* unitRuns(columns: ReadingColumns, order: Int32Array): Generator<readonly [string, Int32Array]> {
  const units = columns.texts.get('unit');
  const codes = units?.codes ?? new Int32Array(0);
  for (let from = 0; from < order.length; ) {
    const to = endOfRun(codes, order, from);
    yield [units?.text(order[from]) ?? '', order.subarray(from, to)];
    from = to;
  }
}

/** Where the run of one unit that begins at `from` ends. */
export function endOfRun(codes: Int32Array, order: Int32Array, from: number): number {
  const code = codes[order[from]];
  let to = from + 1;
  while (to < order.length && codes[order[to]] === code) to++;
  return to;
}

/** Whether any of the rows does not say what one of the kinds is about; most exports say it everywhere. */
export function isOpen(columns: ReadingColumns, kind: NamingKind): boolean {
  const column = columns.texts.get(COLUMN[kind]);
  if (!column) return true;
  const { codes, levels } = column;
  const open = Uint8Array.from(levels, (level) => (level === 'unnamed' || level === 'unknown' ? 1 : 0));
  const { status, rows } = columns;
  // In the order of the files, which is that of memory.
  for (let row = 0; row < rows; row++) {
    const code = row < codes.length ? codes[row] : -1;
    if ((code < 0 || open[code] === 1) && status[row] === ROW.accepted) return true;
  }
  return false;
}

/** Runs of rows of one day. */
export function dayRuns(columns: ReadingColumns, rows: readonly number[]): number[][] {
  const taken = columns.numbers.get('taken_at');
  const runs: number[][] = [];
  let day = Number.NaN;
  for (const row of rows) {
    const own = Math.floor(taken?.get(row) ?? Number.NaN);
    if (own !== day) runs.push([]);
    day = own;
    runs[runs.length - 1].push(row);
  }
  return runs;
}
