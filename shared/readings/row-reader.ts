import * as say from '../messages/import.ts';
import type { FilePlan } from './mapping.ts';
import { DateReader, timeOfDay } from './read-date.ts';
import { READ } from './read-number.ts';
import { OVER_RANGE_BOUND, type ReadingColumns } from './reading-columns.ts';
import { type DateStep, type Group, groupsOf, type NumberStep, type TextStep } from './reading-steps.ts';
import type { Vocabulary } from './vocabulary.ts';
import { keptText } from './word-meaning.ts';

/** Records written a column at a time: few enough to stay in the nearest memory, enough to be worth a column's turn. */
const BLOCK = 64;

type Records = readonly (readonly string[])[];
/** Place in a batch -> why the record cannot be accepted. */
export type Refusals = Map<number, string>;

/** Different numbers of that kind that are kept apart; whoever has more has seen enough to ask. */
const MOST_MARKS = 100_000;

/** A word that no list has, in a column of fires or states. */
export interface StrangeWord {
  readonly head: string;
  readonly field: string;
  readonly word: string;
}

/** Flags that a file may fill in by words of its own: not understood is unknown, and said so. */
const LENIENT = new Set(['adjusted', 'returned_to_service', 'co2_from']);
const FIRES = 'high, low, mid, single, unnamed';
const STATES = 'as_found, as_left, trial, unknown';

/** Writes records of one file into the growing columns, a column at a time over a batch of records. */
export class RowReader {
  /** Shared by the parts of a file: its dates have one order. */
  readonly dates: DateReader;
  readonly groups: readonly Group[];
  /** Words for flags that were not understood, by head. */
  readonly unread = new Map<string, { count: number; example: string }>();
  /** Words for fire and state that were not understood, by the reason for which their rows are set aside. */
  readonly words = new Map<string, StrangeWord>();
  /** Numbers with the other decimal mark than the file's, by the reason for which their rows are set aside. */
  readonly otherMarks = new Map<string, string>();
  /** First row whose dates are kept both ways; -1 where none is. */
  openFrom = -1;
  readonly #columns: ReadingColumns;
  /** First row of each date column that was written both ways. */
  readonly #bothFrom = new Map<DateStep, number>();
  /** Per place in the batch: whether something was measured. */
  #seen = new Uint8Array(0);
  /** The same for columns whose numbers do not count as measured; nobody looks at it. */
  #unseen = new Uint8Array(0);

  constructor(plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns, dates = new DateReader()) {
    this.dates = dates;
    this.#columns = columns;
    this.groups = groupsOf(plan, vocabulary, columns);
  }

  /** Writes one reading of each record from row `base` on. Returns the records that cannot be accepted. */
  read(records: Records, { steps }: Group, base: number): Refusals {
    const rows = base + records.length;
    const capacity = this.#columns.ensure(rows);
    if (this.#seen.length < records.length) {
      this.#seen = new Uint8Array(records.length * 2);
      this.#unseen = new Uint8Array(records.length * 2);
    }
    this.#seen.fill(0, 0, records.length);
    const refused: Refusals = new Map();
    const openBefore = this.openFrom;
    for (const { into } of steps) into.ensure(rows, capacity);
    for (let from = 0; from < records.length; from += BLOCK) {
      const to = Math.min(from + BLOCK, records.length);
      for (const step of steps) {
        if (step.kind === 'number') this.#numbers(step, records, from, to, base, refused);
        else if (step.kind === 'text') this.#texts(step, records, from, to, base, refused);
        else this.#dates(step, records, from, to, base, refused);
      }
    }
    for (let i = 0; i < records.length; i++)
      if (this.#seen[i] === 0 && !refused.has(i)) refused.set(i, say.noMeasurement());
    if (openBefore < 0 && this.openFrom >= 0) keepBothWays(steps, base, this.#bothFrom, rows);
    return refused.size > 1 ? new Map([...refused].sort(([a], [b]) => a - b)) : refused;
  }

  /** A value for all readings from here on, told by a line between the tables. */
  setConstant(field: string, value: string): void {
    for (const { steps } of this.groups)
      for (const step of steps)
        if (step.kind !== 'number' && step.index < 0 && step.field === field) step.constant = value;
  }

  #numbers(step: NumberStep, records: Records, from: number, to: number, base: number, refused: Refusals): void {
    const { reader, into, index, constant, measured } = step;
    const seen = measured ? this.#seen : this.#unseen;
    const other = (i: number, text: string): void => {
      if (reader.status === READ.wrong) this.#wrongNumber(step, text, i, refused);
      if (reader.status === READ.wrong || reader.status === READ.unknown) return;
      seen[i] = 1;
      into.setBound(base + i, reader.status === READ.overRange ? OVER_RANGE_BOUND : reader.bound);
    };
    if (index >= 0) reader.readColumn(records, index, from, to, into.values, base, seen, other);
    else
      for (let i = from; i < to; i++) {
        into.values[base + i] = reader.read(constant);
        other(i, constant);
      }
  }

  #wrongNumber({ reader, head }: NumberStep, text: string, i: number, refused: Refusals): void {
    const reason = reader.fault(head, text);
    refuse(refused, i, reason);
    const isOther = reason === say.commaAmongPoints(head, text) || reason === say.pointAmongCommas(head, text);
    if (isOther && this.otherMarks.size < MOST_MARKS) this.otherMarks.set(reason, text.trim());
  }

  #texts(step: TextStep, records: Records, from: number, to: number, base: number, refused: Refusals): void {
    const { into, index, constant, field } = step;
    const { codes, strange } = into;
    if (index >= 0) into.readColumn(records, index, from, to, base);
    else codes.fill(into.codeOf(constant), base + from, base + to);
    if (field === 'unit') for (let i = from; i < to; i++) if (codes[base + i] < 0) refuse(refused, i, say.noUnitId());
    if (strange.size === 0 || field === 'fuel') return;
    for (let i = from; i < to; i++)
      if (strange.has(codes[base + i])) {
        codes[base + i] = -1;
        this.#notUnderstood(step, index < 0 ? constant : records[i][index], i, refused);
      }
  }

  #notUnderstood({ field, head }: TextStep, text: string, i: number, refused: Refusals): void {
    if (!LENIENT.has(field)) {
      const reason =
        field === 'statistic' ? say.notMean(head, text) : say.badWord(head, text, field === 'fire' ? FIRES : STATES);
      refuse(refused, i, reason);
      if (field === 'fire' || field === 'state') this.words.set(reason, { head, field, word: text.trim() });
      return;
    }
    const seen = this.unread.get(head);
    this.unread.set(head, { count: (seen?.count ?? 0) + 1, example: seen?.example ?? text });
  }

  #dates(step: DateStep, records: Records, from: number, to: number, base: number, refused: Refusals): void {
    const { index, constant, into, time, monthFirst, yearFirst } = step;
    const { dates } = this;
    const { values } = into;
    for (let i = from; i < to; i++) {
      const text = index < 0 ? constant : records[i][index];
      const day = dates.read(text);
      const other = dates.monthFirstValue;
      values[base + i] = day;
      if (Number.isNaN(day) && Number.isNaN(other) && Number.isNaN(dates.yearFirstValue))
        this.#noDate(step, text, i, refused);
      let clock = 0;
      if (time) {
        const written = time.index < 0 ? time.constant : records[i][time.index];
        clock = timeOfDay(keptText(written));
        if (Number.isNaN(clock)) refuse(refused, i, say.badTime(time.head, written));
        values[base + i] = Math.floor(day) + clock;
      }
      // Kept from the first date on whose order is open, so that it can be settled at the end of the file.
      if (dates.orderMatters) {
        if (this.openFrom < 0) this.openFrom = base + i;
        if (!this.#bothFrom.has(step)) this.#bothFrom.set(step, base + i);
        monthFirst.ensure(base + records.length, values.length);
        monthFirst.values[base + i] = time ? Math.floor(other) + clock : other;
        if (dates.short.count > 0) {
          const year = dates.yearFirstValue;
          yearFirst.ensure(base + records.length, values.length);
          yearFirst.values[base + i] = time ? Math.floor(year) + clock : year;
        }
      }
    }
  }

  #noDate({ needed, head }: DateStep, text: string, i: number, refused: Refusals): void {
    const known = keptText(text) !== '' && !/^[-–.]+$/.test(text.trim());
    if (known) refuse(refused, i, say.badDate(head, text));
    else if (needed) refuse(refused, i, say.noDate());
  }
}

/** The order came into question in one column: the rows of the others from `base` on are kept both ways too. */
function keepBothWays(steps: Group['steps'], base: number, from: ReadonlyMap<DateStep, number>, rows: number): void {
  for (const step of steps) {
    if (step.kind !== 'date') continue;
    const { into, monthFirst } = step;
    monthFirst.ensure(rows, into.values.length);
    for (let row = base; row < (from.get(step) ?? rows); row++) monthFirst.values[row] = into.values[row];
  }
}

/** The first reason counts. */
function refuse(refused: Refusals, i: number, reason: string): void {
  if (!refused.has(i)) refused.set(i, reason);
}
