import { type EventEntry, readEventEntries } from '../../shared/events/event-entry.ts';
import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { DATE_ORDER_NAMES, type DateOrder, isDateOrder } from '../../shared/readings/date-order.ts';
import { type Profile, readProfiles } from '../../shared/readings/profile.ts';

export interface EventsParameters {
  readonly files: readonly string[];
  /** The register cell whose spelling of the unit ids is used; '' where the notebook has none. */
  readonly register: string;
  /** The readings cell whose notes are looked through for events; '' looks at none. */
  readonly notes: string;
  /** Which of the events that notes tell of count: 'all', or 'B-07 2024-03-13 gas_valve'. Nothing counts unasked. */
  readonly accept: readonly string[];
  /** Events noted in the notebook itself. */
  readonly entries: readonly EventEntry[];
  /** Answers for dates that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: DateOrder;
  /** How files of known shapes are read; the first that fits is used. */
  readonly profiles: readonly Profile[];
}

export function readParameters(raw: unknown): Outcome<EventsParameters> {
  const given = (raw ?? {}) as Partial<Record<keyof EventsParameters, unknown>>;
  const { files = [], register = 'register', notes = '', accept = [], dateOrder = '' } = given;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('events'));
  if (typeof register !== 'string') return fail(say.badCell('events', 'register'));
  if (typeof notes !== 'string') return fail(say.badCell('events', 'notes'));
  if (!Array.isArray(accept) || !accept.every((one) => typeof one === 'string')) return fail(say.badAccept('events'));
  if (!isDateOrder(dateOrder))
    return fail(say.badChoice('events', 'dateOrder', String(dateOrder), DATE_ORDER_NAMES.join(', ')));
  const entries = readEventEntries(given.entries ?? []);
  if (entries.status !== 'value') return entries;
  const profiles = readProfiles(given.profiles, 'events');
  if (profiles.status !== 'value') return profiles;
  return succeed({ files, register, notes, accept, entries: entries.value, dateOrder, profiles: profiles.value });
}
