import { type Field, READING_FIELDS } from './fields.ts';
import { type GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { NumberReader } from './read-number.ts';
import type { ReadingColumns } from './reading-columns.ts';
import type { Vocabulary } from './vocabulary.ts';
import { keptText, wordMeaning } from './word-meaning.ts';

/** Where the text of a cell stands, or the text that every row has; then index is -1. */
export interface Place {
  readonly index: number;
  readonly head: string;
  /** A preamble further down can change it. */
  constant: string;
}

export interface NumberStep extends Place {
  readonly kind: 'number';
  readonly measured: boolean;
  readonly reader: NumberReader;
  readonly into: GrowingNumbers;
}

export interface DateStep extends Place {
  readonly kind: 'date';
  readonly field: string;
  readonly needed: boolean;
  readonly time: Place | undefined;
  readonly into: GrowingNumbers;
  readonly monthFirst: GrowingNumbers;
  /** Where the same dates go with the year first, if they can have it there. */
  readonly yearFirst: GrowingNumbers;
}

export interface TextStep extends Place {
  readonly kind: 'text';
  readonly field: string;
  readonly into: GrowingTexts;
}

export type Step = NumberStep | DateStep | TextStep;

/** One reading of a line: its own columns and those it shares with the line's other readings. */
export interface Group {
  readonly steps: readonly Step[];
  /** Positions of the measured columns of its own. */
  readonly measured: readonly number[];
}

/** How the records of a file become readings: one group of columns, or several where a line holds several readings. */
export function groupsOf(plan: FilePlan, vocabulary: Vocabulary, columns: ReadingColumns): readonly Group[] {
  const used = plan.columns.filter(({ field }) => vocabulary.fields.has(field));
  const keys = new Set(used.map(groupKey));
  if (keys.size > 1) keys.delete('|');
  const shared = used.filter((column) => groupKey(column) === '|');
  return [...keys].map((key) => {
    const own = key === '|' ? shared : used.filter((column) => groupKey(column) === key);
    const all = key === '|' ? shared : [...shared, ...own];
    const isOwn = new Set(own.map(({ index }) => index));
    const steps = stepsOf(plan, all, vocabulary, columns).map((step) =>
      step.kind === 'number' && !isOwn.has(step.index) ? { ...step, measured: false } : step,
    );
    return { steps, measured: steps.flatMap((step) => (step.kind === 'number' && step.measured ? step.index : [])) };
  });
}

type Source = ColumnMapping & { readonly constant: string };

function stepsOf(
  plan: FilePlan,
  used: readonly ColumnMapping[],
  vocabulary: Vocabulary,
  columns: ReadingColumns,
): Step[] {
  const sources: Source[] = [
    ...used.map((column) => ({ ...column, constant: '' })),
    ...plan.constants.map(({ field, value }) => constantSource(field, value)),
    ...named(used),
  ];
  const time = sources.find(({ field }) => field === 'time_of_day');
  // In the order of the fields, so that a row without a unit says so before it says anything else.
  const order = new Map(READING_FIELDS.map(({ name }, i) => [name, i]));
  return sources
    .sort((a, b) => (order.get(a.field) ?? 99) - (order.get(b.field) ?? 99))
    .flatMap((source) => stepOf(source, time, plan, vocabulary, columns));
}

function stepOf(
  source: Source,
  time: Source | undefined,
  plan: FilePlan,
  vocabulary: Vocabulary,
  columns: ReadingColumns,
): Step[] {
  const field = vocabulary.fields.get(source.field);
  if (!field || field.kind === 'time') return [];
  const place = { index: source.index, head: source.head.trim(), constant: source.constant };
  if (field.kind === 'text' || field.kind === 'word')
    return [{ ...place, kind: 'text', field: field.name, into: textsOf(field, plan, columns) }];
  const into = columns.numbers.get(field.name)!;
  if (field.kind === 'number') {
    const reader = new NumberReader(plan.decimal, source.unit, field.unit);
    return [{ ...place, kind: 'number', measured: field.measured, reader, into }];
  }
  const needed = field.name === 'taken_at';
  const monthFirst = columns.monthFirst.get(field.name)!;
  const yearFirst = columns.yearFirst.get(field.name)!;
  const clock = needed && time ? { index: time.index, head: time.head.trim(), constant: time.constant } : undefined;
  return [{ ...place, kind: 'date', field: field.name, needed, time: clock, into, monthFirst, yearFirst }];
}

/** Each file may have words of its own for fire and state; what is kept goes into one column. */
function textsOf({ name, kind, words }: Field, plan: FilePlan, columns: ReadingColumns): GrowingTexts {
  const own = name === 'fire' ? plan.words.fire : name === 'state' ? plan.words.state : {};
  const meaning = kind === 'word' && words ? wordMeaning(words, own) : keptText;
  const known = columns.texts.get(name);
  if (known) {
    if (name === 'fire' || name === 'state') known.meaning = meaning;
    return known;
  }
  const column = new GrowingTexts(meaning);
  columns.texts.set(name, column);
  return column;
}

const groupKey = ({ fire, state }: ColumnMapping): string => `${fire}|${state}`;

/** Fire and state that the heads of a group name, as constants of its readings. */
function named(columns: readonly ColumnMapping[]): Source[] {
  const special = columns.find((column) => groupKey(column) !== '|');
  if (!special) return [];
  return (['fire', 'state'] as const).flatMap((field) =>
    special[field] === '' ? [] : [constantSource(field, special[field])],
  );
}

const constantSource = (field: string, constant: string): Source => ({
  index: -1,
  head: field,
  key: field,
  field,
  unit: '',
  fire: '',
  state: '',
  confidence: 1,
  reason: '',
  constant,
});
