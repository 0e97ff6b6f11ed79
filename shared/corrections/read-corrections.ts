import * as say from '../messages/corrections.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { readIsoDate } from '../quantities/dates.ts';
import { CORRECTABLE, correctedValue } from './corrected-value.ts';
import type { Correction, CorrectionDone, RowKey } from './correction.ts';
import { correctionId } from './correction-id.ts';
import { nextTurn } from './order-of-effect.ts';

type Fields = Readonly<Record<string, unknown>>;

const ACTIONS = ['change', 'set_aside', 'restore', 'merge_units', 'swap_units'];
const ROW_TEXTS = ['unit', 'taken_at', 'fire', 'state', 'fuel'] as const;

/**
 * Reads a list of corrections, complete and sound, or says in one sentence which entry is not. Ids are made anew; an entry without a turn comes behind those of its day that stand
 * above it.
 */
export function readCorrections(raw: unknown): Outcome<readonly Correction[]> {
  if (!Array.isArray(raw)) return fail(say.notList());
  const corrections: Correction[] = [];
  const ids = new Set<string>();
  for (const [at, entry] of raw.entries()) {
    const read = readCorrection(entry, at + 1, corrections);
    if (typeof read === 'string') return fail(read);
    if (ids.has(read.id)) return fail(say.sameTwice(at + 1));
    ids.add(read.id);
    corrections.push(read);
  }
  return succeed(corrections);
}

/** The correction, made after `others`, or the sentence that says what is wrong with entry number `place`. */
export function readCorrection(raw: unknown, place: number, others: readonly Correction[] = []): Correction | string {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return say.badEntry(place, 'the entry', 'an object', String(raw));
  const fields = raw as Fields;
  for (const field of ['reason', 'initials'])
    if (!isText(fields[field])) return say.badEntry(place, field, 'a text that is not empty', shown(fields[field]));
  if (!isDay(fields['made_on'])) return say.badEntry(place, 'made_on', 'a date, YYYY-MM-DD', shown(fields['made_on']));
  const { turn: given } = fields;
  if (given !== undefined && !isCount(given)) return say.badEntry(place, 'turn', 'a whole number from 1', shown(given));
  const done = readDone(fields, place);
  if (typeof done === 'string') return done;
  const made = {
    reason: String(fields['reason']).trim(),
    initials: String(fields['initials']).trim(),
    made_on: String(fields['made_on']),
  };
  const turn = given ?? nextTurn(made.made_on, others);
  return { id: correctionId({ ...done, ...made }), ...done, ...made, turn, lifted: fields['lifted'] === true };
}

function readDone(fields: Fields, place: number): CorrectionDone | string {
  const { action } = fields;
  switch (action) {
    case 'change':
      return readChange(fields, place);
    case 'set_aside':
    case 'restore': {
      const row = readRow(fields['row'], place);
      return typeof row === 'string' ? row : { action, row };
    }
    case 'merge_units': {
      const { from, to } = fields;
      if (!isText(from)) return say.badEntry(place, 'from', 'a unit', shown(from));
      if (!isText(to) || to === from) return say.badEntry(place, 'to', 'another unit', shown(to));
      return { action, from, to };
    }
    case 'swap_units':
      return readSwap(fields, place);
    default:
      return say.unknownAction(place, shown(action), ACTIONS.join(', '));
  }
}

function readChange(fields: Fields, place: number): CorrectionDone | string {
  const row = readRow(fields['row'], place);
  if (typeof row === 'string') return row;
  const { column, value } = fields;
  if (typeof column !== 'string' || !CORRECTABLE.includes(column)) return say.unknownColumn(place, shown(column));
  if (typeof value !== 'string' || !correctedValue(column, value)) return say.badValue(place, column, shown(value));
  return { action: 'change', row, column, value };
}

function readSwap(fields: Fields, place: number): CorrectionDone | string {
  const { units, visited_on } = fields;
  const [first, second] = Array.isArray(units) ? (units as readonly unknown[]) : [];
  if (!isText(first) || !isText(second) || first === second || (units as unknown[]).length !== 2)
    return say.badEntry(place, 'units', 'two different units', shown(units));
  if (!isDay(visited_on)) return say.badEntry(place, 'visited_on', 'a date, YYYY-MM-DD', shown(visited_on));
  return { action: 'swap_units', units: [first, second], visited_on };
}

function readRow(raw: unknown, place: number): RowKey | string {
  if (typeof raw !== 'object' || raw === null) return say.badEntry(place, 'row', 'the key of a reading', shown(raw));
  const given = raw as Fields;
  const key: Record<string, string> = {};
  for (const field of ROW_TEXTS) {
    const value = given[field] ?? (field === 'fuel' ? '' : undefined);
    if (typeof value !== 'string' || (value === '' && field !== 'fuel'))
      return say.badEntry(place, `row.${field}`, 'a text', shown(value));
    key[field] = value;
  }
  const { nth = 1 } = given;
  if (!isCount(nth)) return say.badEntry(place, 'row.nth', 'a whole number from 1', shown(nth));
  return {
    unit: key.unit,
    taken_at: key.taken_at,
    fire: key.fire,
    state: key.state,
    fuel: key.fuel,
    nth,
  };
}

const isText = (value: unknown): value is string => typeof value === 'string' && value.trim() !== '';
const isCount = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= 1;
const isDay = (value: unknown): value is string =>
  typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value) && !Number.isNaN(readIsoDate(value));
const shown = (value: unknown): string => (typeof value === 'string' ? value : (JSON.stringify(value) ?? 'missing'));
