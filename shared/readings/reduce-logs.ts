import * as say from '../messages/import.ts';
import { twelveDigits } from '../quantities/twelve-digits.ts';
import { type GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import { highCoOf } from './high-co.ts';
import { minuteOffsets } from './minute-clock.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';
import { keptText } from './word-meaning.ts';

/**
 * A log is at least this many lines no further apart than this. Readings at fire points are minutes apart.
 */
const LEAST_LINES = 15;
const LARGEST_STEP_S = 15;
/** Or this many lines that follow one another at one interval, no longer than this; one of them may be missing. */
const LEAST_SLOW_LINES = 8;
const LONGEST_STEP_S = 60;
const STEP_TOLERANCE_S = 1.5;
/** What is averaged (of a slow log at least so many lines), and what counts as steady in it: O2 within 0.2 points, flue within 2 K (common practice). */
const WINDOW_S = 60;
const WINDOW_STEPS = 4;
const STEADY_O2_PCT = 0.2;
const STEADY_FLUE_K = 2;
/** Above this the probe is in the open air. */
const AIR_O2_PCT = 18;
const SECONDS = 86_400;

/** Logs with a high CO outside the part that is read: that of the first one, and its line. */
export interface HighCoInLogs {
  readonly logs: number;
  readonly line: number;
  readonly found: string;
}

export interface LogsReduced {
  readonly readings: number;
  readonly lines: number;
  readonly highCo: HighCoInLogs | undefined;
}

/**
 * Reduces runs of log lines in one file to one reading each, at their steadiest part. The reading takes the place of the
 * run's first row; the others are skipped.
 */
export function reduceLogs(columns: ReadingColumns, file: number): LogsReduced {
  const sum: { readings: number; lines: number; highCo: HighCoInLogs | undefined } = {
    readings: 0,
    lines: 0,
    highCo: undefined,
  };
  const end = columns.fileEnd(file);
  const clock = clockOf(columns, file);
  const close = (start: number, length: number, last: number): void => {
    if (length < (pace > LARGEST_STEP_S + 0.5 ? LEAST_SLOW_LINES : LEAST_LINES)) return;
    const run: number[] = [];
    for (let row = start; row <= last; row++) if (columns.status[row] === ROW.accepted) run.push(row);
    const high = reduceRun(columns, run, clock);
    if (high) sum.highCo = { ...(sum.highCo ?? high), logs: (sum.highCo?.logs ?? 0) + 1 };
    sum.readings++;
    sum.lines += length;
  };
  let [start, length, last] = [-1, 0, -1];
  // Seconds between the first two lines of the run.
  let pace = Number.NaN;
  for (let row = columns.fileStarts[file]; row < end; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    const step = last < 0 ? Number.NaN : clock(row) - clock(last);
    const same = step > 0.5 && step <= 2 * LONGEST_STEP_S + STEP_TOLERANCE_S && sameTest(columns, row, last);
    const begins = same && step <= LONGEST_STEP_S + STEP_TOLERANCE_S;
    if (!(length > 1 ? same && keepsPace(step, pace) : begins)) {
      close(start, length, last);
      // What came before a slow log may stand as near to its first line as its second does.
      [start, length] = begins && length === 2 ? [last, 1] : [row, 0];
    }
    if (length === 1) pace = step;
    length++;
    last = row;
  }
  close(start, length, last);
  return sum;
}

/** The time of a row in seconds. */
type Clock = (row: number) => number;

function clockOf(columns: ReadingColumns, file: number): Clock {
  const taken = columns.numbers.get('taken_at')!.values;
  const offsets = minuteOffsets(columns, file, (row, other) => sameTest(columns, row, other));
  return offsets.size === 0 ? (row) => taken[row] * SECONDS : (row) => taken[row] * SECONDS + (offsets.get(row) ?? 0);
}

/** Whether a line goes on with a log whose first two lines were `pace` seconds apart. */
function keepsPace(step: number, pace: number): boolean {
  if (pace <= LARGEST_STEP_S + 0.5) return step <= LARGEST_STEP_S + 0.5;
  return [pace, 2 * pace].some((wanted) => Math.abs(step - wanted) <= STEP_TOLERANCE_S);
}

const TEST = ['unit', 'fire', 'state', 'fuel', 'visit', 'analyzer'];

function sameTest(columns: ReadingColumns, row: number, other: number): boolean {
  return TEST.every((name) => columns.texts.get(name)?.code(row) === columns.texts.get(name)?.code(other));
}

/** Returns the first high CO outside the part that is read. */
function reduceRun(
  columns: ReadingColumns,
  run: readonly number[],
  clock: Clock,
): Omit<HighCoInLogs, 'logs'> | undefined {
  const pace = usualStep(run, clock);
  const window = steadiest(columns, run, clock, Math.max(WINDOW_S, WINDOW_STEPS * pace));
  const high = [...run.slice(0, window.from), ...run.slice(window.to)].find((row) => highCoOf(columns, row) !== '');
  const told = high === undefined ? undefined : { line: columns.lines[high], found: highCoOf(columns, high) };
  const rows = run.slice(window.from, window.to);
  const [first] = run;
  const taken = columns.numbers.get('taken_at')!;
  const at = taken.get(rows[rows.length - 1]);
  const seconds = Math.round(clock(rows[rows.length - 1]) - clock(rows[0]));
  for (const [name, column] of columns.numbers)
    if (name !== 'taken_at' && name !== 'calibrated_on' && column.values.length > 0) average(column, rows, first);
  const note = say.steadyPart(
    run.length,
    Math.round(pace),
    columns.lines[rows[0]],
    columns.lines[rows[rows.length - 1]],
    seconds,
    twelveDigits(Math.round(window.spread * 100) / 100),
  );
  taken.values[first] = at;
  columns.lines[first] = columns.lines[rows[0]];
  addNote(columns, first, note);
  for (const row of run.slice(1)) columns.status[row] = ROW.skipped;
  return told;
}

/** Mean of what is known; a bound among the values makes the mean one. */
function average(column: GrowingNumbers, rows: readonly number[], into: number): void {
  let sum = 0;
  let known = 0;
  let bound = 0;
  for (const row of rows) {
    const value = column.get(row);
    if (column.boundAt(row) !== 0) bound = column.boundAt(row);
    if (Number.isNaN(value)) continue;
    sum += value;
    known++;
  }
  column.values[into] = known > 0 ? sum / known : Number.NaN;
  column.setBound(into, bound);
}

interface Window {
  readonly from: number;
  readonly to: number;
  readonly spread: number;
}

/** Seconds from one line to the next, as most of them are. */
function usualStep(run: readonly number[], clock: Clock): number {
  const steps = run.slice(1).map((row, i) => clock(row) - clock(run[i]));
  return steps.sort((a, b) => a - b)[steps.length >> 1];
}

/** The last window of so many seconds that is steady, else the steadiest; places in the run. */
function steadiest(columns: ReadingColumns, run: readonly number[], clock: Clock, length: number): Window {
  const seconds = (from: number, to: number): number => clock(run[to]) - clock(run[from]);
  let best: Window & { score: number } = {
    from: 0,
    to: run.length,
    spread: Number.NaN,
    score: Number.POSITIVE_INFINITY,
  };
  let start = 0;
  for (let end = 1; end <= run.length; end++) {
    while (seconds(start, end - 1) > length + 0.5) start++;
    const full = seconds(start, end - 1) >= length * 0.9;
    if (!full && !(start === 0 && end === run.length)) continue;
    const rows = run.slice(start, end);
    const o2 = spreadOf(columns.numbers.get('o2_pct')!, rows);
    const flue = spreadOf(columns.numbers.get('flue')!, rows);
    const steady = o2.spread <= STEADY_O2_PCT && !(flue.spread > STEADY_FLUE_K);
    const known = Number.isNaN(o2.spread) ? flue.spread / STEADY_FLUE_K : o2.spread / STEADY_O2_PCT;
    const score = (o2.highest > AIR_O2_PCT ? 1e6 : 0) + (steady ? 0 : 1 + (Number.isNaN(known) ? 0 : known));
    if (score <= best.score) best = { from: start, to: end, spread: o2.spread, score };
  }
  return best;
}

function spreadOf(column: GrowingNumbers, rows: readonly number[]): { spread: number; highest: number } {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    const value = column.get(row);
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  return { spread: highest >= lowest ? highest - lowest : Number.NaN, highest };
}

function addNote(columns: ReadingColumns, row: number, note: string): void {
  const notes = columns.texts.get('note') ?? new GrowingTexts(keptText);
  columns.texts.set('note', notes);
  notes.ensure(columns.rows, columns.rows);
  const before = notes.text(row);
  notes.codes[row] = notes.codeOfCanonical(before === '' ? note : `${before}; ${note}`);
}
