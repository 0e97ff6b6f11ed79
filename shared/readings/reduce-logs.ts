import * as say from '../messages/import.ts';
import { twelveDigits } from '../quantities/twelve-digits.ts';
import { GrowingTexts } from './growing-columns.ts';
import type { Merged, ReadingColumns } from './reading-columns.ts';
import { keptText } from './word-meaning.ts';

/**
 * A log is at least this many lines no further apart than this. Readings at fire points are minutes apart.
 */
const LEAST_LINES = 15;
const LARGEST_STEP_S = 15;
/** What is averaged, and what counts as steady in it: O2 within 0.2 points, flue within 2 K (common practice). */
const WINDOW_S = 60;
const STEADY_O2_PCT = 0.2;
const STEADY_FLUE_K = 2;
/** Above this the probe is in the open air. */
const AIR_O2_PCT = 18;
const SECONDS = 86_400;

/** Reduces runs of log lines in one file to one reading each, at their steadiest part; marks the other lines as merged. */
export function reduceLogs(columns: ReadingColumns, file: number, merged: Merged): { readings: number; lines: number } {
  let readings = 0;
  let lines = 0;
  const end = columns.fileEnd(file);
  for (let from = columns.fileStarts[file]; from < end; ) {
    let to = from + 1;
    while (to < end && continues(columns, to)) to++;
    if (to - from >= LEAST_LINES) {
      reduceRun(columns, from, to, merged);
      readings++;
      lines += to - from;
    }
    from = to;
  }
  return { readings, lines };
}

function continues(columns: ReadingColumns, row: number): boolean {
  const taken = columns.numbers.get('taken_at')!;
  const step = (taken.get(row) - taken.get(row - 1)) * SECONDS;
  if (!(step > 0.5 && step <= LARGEST_STEP_S + 0.5)) return false;
  for (const name of ['unit', 'fire', 'state', 'fuel', 'visit', 'analyzer']) {
    const column = columns.texts.get(name);
    if (column && column.code(row) !== column.code(row - 1)) return false;
  }
  return true;
}

function reduceRun(columns: ReadingColumns, from: number, to: number, merged: Merged): void {
  const window = steadiest(columns, from, to);
  const taken = columns.numbers.get('taken_at')!;
  const at = taken.get(window.to - 1);
  const seconds = Math.round((at - taken.get(window.from)) * SECONDS);
  for (const [name, column] of columns.numbers) {
    if (name === 'taken_at' || name === 'calibrated_on' || column.values.length === 0) continue;
    let sum = 0;
    let known = 0;
    let bound = 0;
    for (let row = window.from; row < window.to; row++) {
      const value = column.get(row);
      if (Number.isNaN(value)) continue;
      sum += value;
      known++;
      if (column.boundAt(row) !== 0) bound = column.boundAt(row);
    }
    column.set(from, known > 0 ? sum / known : Number.NaN, bound, column.values.length);
  }
  const note = say.steadyPart(
    to - from,
    columns.lines.get(window.from),
    columns.lines.get(window.to - 1),
    seconds,
    twelveDigits(Math.round(window.spread * 100) / 100),
  );
  taken.set(from, at, 0, taken.values.length);
  columns.lines.set(from, columns.lines.get(window.from), 0, columns.lines.values.length);
  addNote(columns, from, note);
  for (let row = from + 1; row < to; row++) merged.mark(row);
}

interface Window {
  readonly from: number;
  readonly to: number;
  readonly spread: number;
}

/** The last window that is steady, else the steadiest. */
function steadiest(columns: ReadingColumns, from: number, to: number): Window {
  const taken = columns.numbers.get('taken_at')!;
  let best: Window & { score: number } = { from, to, spread: Number.NaN, score: Number.POSITIVE_INFINITY };
  let start = from;
  for (let end = from + 1; end <= to; end++) {
    while ((taken.get(end - 1) - taken.get(start)) * SECONDS > WINDOW_S + 0.5) start++;
    const full = (taken.get(end - 1) - taken.get(start)) * SECONDS >= WINDOW_S * 0.9;
    if (!full && !(start === from && end === to)) continue;
    const o2 = spreadOf(columns, 'o2_pct', start, end);
    const flue = spreadOf(columns, 'flue', start, end);
    const steady = o2.spread <= STEADY_O2_PCT && !(flue.spread > STEADY_FLUE_K);
    const known = Number.isNaN(o2.spread) ? flue.spread / STEADY_FLUE_K : o2.spread / STEADY_O2_PCT;
    const score = (o2.highest > AIR_O2_PCT ? 1e6 : 0) + (steady ? 0 : 1 + (Number.isNaN(known) ? 0 : known));
    if (score <= best.score) best = { from: start, to: end, spread: o2.spread, score };
  }
  return best;
}

function spreadOf(
  columns: ReadingColumns,
  field: string,
  from: number,
  to: number,
): { spread: number; highest: number } {
  const column = columns.numbers.get(field)!;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let row = from; row < to; row++) {
    const value = column.get(row);
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { spread: highest >= lowest ? highest - lowest : Number.NaN, highest };
}

function addNote(columns: ReadingColumns, row: number, note: string): void {
  const notes = columns.texts.get('note') ?? new GrowingTexts(keptText);
  columns.texts.set('note', notes);
  const before = notes.text(row);
  notes.set(row, notes.codeOfCanonical(before === '' ? note : `${before}; ${note}`), columns.capacity(row));
}
