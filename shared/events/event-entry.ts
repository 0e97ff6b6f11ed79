import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { plainUnit } from '../corrections/row-key-text.ts';
import * as say from '../messages/import.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { readIsoDate } from '../quantities/dates.ts';
import { EVENT_NAMES } from '../readings/event-vocabulary.ts';

/** Something that happened to a unit, noted in the notebook itself and not in a file. */
export interface EventEntry {
  /** Follows from unit, day and event: the same event noted on two machines is one. */
  readonly id: string;
  readonly unit: string;
  /** YYYY-MM-DD. */
  readonly on: string;
  readonly event: string;
  readonly note: string;
}

/** Reads a list of noted events, complete and sound, or says in one sentence which is not. Ids are made anew. */
export function readEventEntries(raw: unknown): Outcome<readonly EventEntry[]> {
  if (!Array.isArray(raw)) return fail(say.badEntries());
  const entries = new Map<string, EventEntry>();
  for (const [at, item] of (raw as readonly unknown[]).entries()) {
    const { unit, on, event, note = '' } = (item ?? {}) as Readonly<Record<string, unknown>>;
    if (typeof unit !== 'string' || unit.trim() === '')
      return fail(say.badEntry(at + 1, 'unit', 'a unit', shown(unit)));
    if (typeof on !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(on) || Number.isNaN(readIsoDate(on)))
      return fail(say.badEntry(at + 1, 'on', 'a date, YYYY-MM-DD', shown(on)));
    if (typeof event !== 'string' || !EVENT_NAMES.includes(event))
      return fail(say.badEntry(at + 1, 'event', `one of ${EVENT_NAMES.join(', ')}`, shown(event)));
    if (typeof note !== 'string') return fail(say.badEntry(at + 1, 'note', 'a text', shown(note)));
    const id = idOf(unit, on, event);
    if (entries.has(id)) return fail(say.sameEvent(at + 1, unit, on, event));
    entries.set(id, { id, unit: unit.trim(), on, event, note });
  }
  return succeed([...entries.values()]);
}

/** 64 bits of the SHA-256 of what happened. */
const idOf = (unit: string, on: string, event: string): string =>
  bytesToHex(sha256(utf8ToBytes(JSON.stringify([plainUnit(unit), on, event])))).slice(0, 16);

const shown = (value: unknown): string => (typeof value === 'string' ? value : (JSON.stringify(value) ?? 'missing'));
