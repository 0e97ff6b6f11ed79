import * as say from '../messages/import.ts';
import type { Field } from './fields.ts';
import { type GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { DateReader, timeOfDay } from './read-date.ts';
import { NumberReader, READ } from './read-number.ts';
import { OVER_RANGE_BOUND, type ReadingColumns } from './reading-columns.ts';
import type { Vocabulary } from './vocabulary.ts';
import { keptText, NOT_UNDERSTOOD, wordMeaning } from './word-meaning.ts';

interface Place {
  readonly index: number;
  readonly head: string;
  /** Text of every row, for constants; then index is -1. A preamble further down can change it. */
  constant: string;
}
interface NumberStep extends Place {
  readonly kind: 'number';
  readonly measured: boolean;
  readonly reader: NumberReader;
  readonly into: GrowingNumbers;
}
interface DateStep extends Place {
  readonly kind: 'date';
  readonly needed: boolean;
  readonly time: Place | undefined;
  readonly into: GrowingNumbers;
  readonly monthFirst: GrowingNumbers;
}
interface TextStep extends Place {
  readonly kind: 'text';
  readonly field: string;
  readonly into: GrowingTexts;
  /** Per code: whether the word was not understood. */
  readonly bad: boolean[];
}
type Step = NumberStep | DateStep | TextStep;

/** One reading of a line: its own columns and those it shares with the line's other readings. */
export interface Group {
  readonly steps: readonly Step[];
  readonly measured: readonly NumberStep[];
}

/** Flags that a file may fill in by words of its own: not understood is unknown, and said so. */
const LENIENT = new Set(['adjusted', 'returned_to_service', 'co2_from']);

/** Turns records of one file into rows of the growing columns, as its plan says. */
export class RowReader {
  readonly dates = new DateReader();
  readonly groups: readonly Group[];
  /** Words for flags that were not understood, by head. */
  readonly unread = new Map<string, { count: number; example: string }>();
  /** First row whose dates are kept both ways; -1 where none is. */
  openFrom = -1;
  readonly #columns: ReadingColumns;
  readonly #plan: FilePlan;
  readonly #vocabulary: Vocabulary;

  constructor(plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns) {
    this.#plan = plan;
    this.#vocabulary = vocabulary;
    this.#columns = columns;
    const used = plan.columns.filter(({ field }) => vocabulary.fields.has(field));
    const keys = new Set(used.map(groupKey));
    if (keys.size > 1) keys.delete('|');
    const shared = used.filter((column) => groupKey(column) === '|');
    this.groups = [...keys].map((key) =>
      this.#group([...shared, ...used.filter((c) => key !== '|' && groupKey(c) === key)]),
    );
  }

  /** Writes one reading of a record at `row`; returns '' or the reason for which it cannot be accepted. */
  read(record: readonly string[], { steps, measured }: Group, row: number): string {
    const { length } = this.#columns.lines.values;
    const capacity = row < length ? length : this.#columns.capacity(row);
    for (const step of steps) {
      const text = step.index < 0 ? step.constant : record[step.index];
      const reason =
        step.kind === 'number'
          ? this.#number(step, text, row, capacity)
          : step.kind === 'text'
            ? this.#text(step, text, row, capacity)
            : this.#date(step, text, record, row, capacity);
      if (reason !== '') return reason;
    }
    for (const { into } of measured) if (!Number.isNaN(into.values[row]) || into.boundAt(row) !== 0) return '';
    return say.noMeasurement();
  }

  /** A value for all readings from here on, told by a line between the tables. False where the plan has none such. */
  setConstant(field: string, value: string): boolean {
    let told = false;
    for (const { steps } of this.groups)
      for (const step of steps)
        if (step.kind === 'text' && step.index < 0 && step.field === field) {
          step.constant = value;
          told = true;
        }
    return told;
  }

  /** Whether a record holds anything in the group's measured columns. */
  mentions(record: readonly string[], { measured }: Group): boolean {
    return measured.some(({ index }) => (record[index] ?? '').trim() !== '');
  }

  #number({ reader, into, head }: NumberStep, text: string, row: number, capacity: number): string {
    const value = reader.read(text);
    if (reader.status === READ.wrong) return say.badNumber(head, text);
    into.set(row, value, reader.status === READ.overRange ? OVER_RANGE_BOUND : reader.bound, capacity);
    return '';
  }

  #text({ into, bad, head, field }: TextStep, text: string, row: number, capacity: number): string {
    const code = into.codeOf(text);
    if (code >= 0) {
      bad[code] ??= into.levels[code].startsWith(NOT_UNDERSTOOD);
      if (bad[code] && field !== 'fuel') {
        if (!LENIENT.has(field)) return say.badWord(head, text, field === 'fire' ? FIRES : STATES);
        const seen = this.unread.get(head);
        this.unread.set(head, { count: (seen?.count ?? 0) + 1, example: seen?.example ?? text });
        into.set(row, -1, capacity);
        return '';
      }
    } else if (field === 'unit') return say.noUnitId();
    into.set(row, code, capacity);
    return '';
  }

  #date(step: DateStep, text: string, record: readonly string[], row: number, capacity: number): string {
    let day = this.dates.read(text);
    let monthFirst = this.dates.monthFirstValue;
    if (Number.isNaN(day) && Number.isNaN(monthFirst)) {
      if (step.needed) return keptText(text) === '' ? say.noDate() : say.badDate(step.head, text);
      if (keptText(text) !== '' && !/^[-–.]+$/.test(text.trim())) return say.badDate(step.head, text);
    }
    if (step.time) {
      const written = step.time.index < 0 ? step.time.constant : record[step.time.index];
      const time = timeOfDay(keptText(written));
      if (Number.isNaN(time)) return say.badTime(step.time.head, written);
      day = Math.floor(day) + time;
      monthFirst = Math.floor(monthFirst) + time;
    }
    step.into.set(row, day, 0, capacity);
    // Kept from the first date on whose order is open, so that it can be settled at the end of the file.
    if (this.dates.orderMatters) {
      if (this.openFrom < 0) this.openFrom = row;
      step.monthFirst.set(row, monthFirst, 0, capacity);
    }
    return '';
  }

  #group(columns: readonly ColumnMapping[]): Group {
    const places = [
      ...columns.map((column) => ({ ...column, constant: '' })),
      ...this.#plan.constants.map(({ field, value }) => ({ ...CONSTANT, field, head: field, constant: value })),
      ...named(columns),
    ];
    const time = places.find(({ field }) => field === 'time_of_day');
    const steps = places.flatMap((place) => this.#step(place, time));
    const own = new Set(columns.filter((column) => groupKey(column) !== '|').map(({ index }) => index));
    const measured = steps.filter(
      (step): step is NumberStep => step.kind === 'number' && step.measured && (own.size === 0 || own.has(step.index)),
    );
    return { steps, measured };
  }

  #step(place: ColumnMapping & { constant: string }, time: Place | undefined): Step[] {
    const field = this.#vocabulary.fields.get(place.field);
    if (!field || field.kind === 'time') return [];
    const { index, head, constant } = place;
    const at = { index, head: head.trim(), constant };
    if (field.kind === 'text' || field.kind === 'word')
      return [{ ...at, kind: 'text', field: field.name, into: this.#texts(field), bad: [] }];
    const into = this.#columns.numbers.get(field.name)!;
    if (field.kind === 'number') {
      const reader = new NumberReader(this.#plan.decimal, place.unit, field.unit);
      return [{ ...at, kind: 'number', measured: field.measured, reader, into }];
    }
    const monthFirst = this.#columns.monthFirst.get(field.name)!;
    const needed = field.name === 'taken_at';
    return [{ ...at, kind: 'date', needed, time: needed ? time : undefined, into, monthFirst }];
  }

  /** Each file has words of its own; what is kept goes into one column. */
  #texts({ name, kind, words }: Field): GrowingTexts {
    const known = this.#columns.texts.get(name);
    if (known && name !== 'fire' && name !== 'state') return known;
    const own = name === 'fire' ? this.#plan.words.fire : name === 'state' ? this.#plan.words.state : {};
    const meaning = kind === 'word' && words ? wordMeaning(words, own) : keptText;
    if (known) known.meaning = meaning;
    const column = known ?? new GrowingTexts(meaning);
    this.#columns.texts.set(name, column);
    return column;
  }
}

const FIRES = 'high, low, mid, single, unnamed';
const STATES = 'as_found, as_left, trial, unknown';
const CONSTANT: ColumnMapping = {
  index: -1,
  head: '',
  field: '',
  unit: '',
  fire: '',
  state: '',
  confidence: 1,
  reason: '',
};

const groupKey = ({ fire, state }: ColumnMapping): string => `${fire}|${state}`;

/** Fire and state that the heads of a group name, as constants of its readings. */
function named(columns: readonly ColumnMapping[]): (ColumnMapping & { constant: string })[] {
  const special = columns.find((column) => groupKey(column) !== '|');
  if (!special) return [];
  return (['fire', 'state'] as const).flatMap((field) =>
    special[field] === '' ? [] : [{ ...CONSTANT, field, head: field, constant: special[field] }],
  );
}
