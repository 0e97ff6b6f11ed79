import * as say from '../messages/import.ts';
import { ask, type Outcome, type Question, succeed } from '../outcome.ts';
import { writeIsoDate } from '../quantities/dates.ts';
import type { SetAside } from './file-read.ts';
import { findCopies } from './find-copies.ts';
import { findDuplicates } from './find-duplicates.ts';
import { highCoOf } from './high-co.ts';
import type { FilePlan } from './mapping.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

/** The copy in the file given last counts, or both do; '' asks. */
export type RevisedAnswer = '' | 'keep_last' | 'keep_both';

/** Where a row stands, and the one it is the same as or revises. */
export interface RowPlace {
  readonly file: string;
  readonly line: number;
  readonly ofFile: string;
  readonly ofLine: number;
}

export interface CopiesSettled {
  readonly duplicates: readonly RowPlace[];
  /** Kept side by side. */
  readonly revised: readonly RowPlace[];
  readonly setAside: readonly SetAside[];
  /** Rows that no longer count as accepted. */
  readonly taken: number;
}

type Pair = readonly [row: number, of: number];

/**
 * Takes out rows that say the same as another. A reading that stands in two files with other values is a revised copy,
 * which only the user can judge; two at one time within one file are two readings.
 */
export function settleCopies(
  columns: ReadingColumns,
  plans: readonly FilePlan[],
  order: Int32Array,
  answer: RevisedAnswer,
): Outcome<CopiesSettled> {
  const exact = findDuplicates(columns, order);
  const copies = findCopies(columns, plans, order, new Set(exact.duplicates.map(([row]) => row)));
  const duplicates = named([...exact.duplicates, ...copies]).sort(([a], [b]) => a - b);
  for (const [row] of duplicates) columns.status[row] = ROW.duplicate;
  const both = exact.revised.filter(
    ([row, of]) => columns.status[row] === ROW.accepted && columns.status[of] === ROW.accepted,
  );
  const revised = both.filter((pair) => isRevision(columns, pair));
  if (answer === '' && revised.length > 0) return ask(question(columns, revised));
  const setAside = answer === 'keep_last' ? replaced(columns, revised) : [];
  const kept = both.filter(([row, of]) => columns.status[row] === ROW.accepted && columns.status[of] === ROW.accepted);
  return succeed({
    duplicates: duplicates.map((pair) => placeOf(columns, pair)),
    revised: kept.map((pair) => placeOf(columns, pair)),
    setAside,
    taken: duplicates.length + setAside.length,
  });
}

/** A copy of a copy is one of the row that is kept. */
function named(pairs: readonly Pair[]): Pair[] {
  const of = new Map(pairs);
  const root = (row: number): number => {
    const next = of.get(row);
    return next === undefined ? row : root(next);
  };
  return pairs.map(([row]) => [row, root(row)]);
}

/** On days without a time, several trials are several readings; as found and as left are there once a visit. */
function isRevision(columns: ReadingColumns, [row, of]: Pair): boolean {
  if (columns.fileOf(row) === columns.fileOf(of)) return false;
  const timed = !Number.isInteger(columns.numbers.get('taken_at')?.get(row));
  return timed || ['as_found', 'as_left'].includes(columns.texts.get('state')?.text(row) ?? '');
}

/** Of each reading the rows of the file given last stay. */
function replaced(columns: ReadingColumns, revised: readonly Pair[]): SetAside[] {
  const groups = new Map<number, number[]>();
  for (const [row, of] of revised) groups.set(of, [...(groups.get(of) ?? [of]), row]);
  return [...groups.values()].flatMap((rows) => {
    const last = Math.max(...rows.map((row) => columns.fileOf(row)));
    const by = rows.find((row) => columns.fileOf(row) === last) ?? rows[0];
    return rows
      .filter((row) => columns.fileOf(row) !== last)
      .map((row) => {
        columns.status[row] = ROW.setAside;
        const reason = say.replacedBy(columns.files[last], columns.lines[by]);
        return { file: columns.fileOf(row), line: columns.lines[row], reason, highCo: highCoOf(columns, row) };
      });
  });
}

function placeOf(columns: ReadingColumns, [row, of]: Pair): RowPlace {
  return {
    file: columns.files[columns.fileOf(row)],
    line: columns.lines[row],
    ofFile: columns.files[columns.fileOf(of)],
    ofLine: columns.lines[of],
  };
}

const SHOWN = 3;
const REVISED = [
  { value: 'keep_last', label: 'the copy in the file that was added last counts' },
  { value: 'keep_both', label: 'both are readings of their own' },
];

function question(columns: ReadingColumns, revised: readonly Pair[]): Question {
  const examples = revised.slice(0, SHOWN).map((pair) => {
    const { file, line, ofFile, ofLine } = placeOf(columns, pair);
    const unit = columns.texts.get('unit')?.text(pair[0]) ?? '';
    const taken = writeIsoDate(columns.numbers.get('taken_at')?.get(pair[0]) ?? Number.NaN);
    return say.revisedPair(unit, taken, difference(columns, pair), ofFile, ofLine, file, line);
  });
  return {
    message: say.askRevised(revised.length, examples.join('; ')),
    remedy: say.answerAtCell(REVISED.map(({ label }) => label)),
    byCommand: say.revisedByCommand(),
    parameter: 'revised',
    options: REVISED,
  };
}

/** The first value in which two copies differ: 'o2_pct 5.1 and 4.6'. */
function difference(columns: ReadingColumns, [row, of]: Pair): string {
  const shown = (value: number): string => (Number.isNaN(value) ? 'unknown' : String(Number(value.toPrecision(4))));
  for (const [name, column] of columns.numbers) {
    const [before, after] = [shown(column.get(of)), shown(column.get(row))];
    if (before !== after) return say.twoValues(name, before, after);
  }
  return say.otherTexts();
}
