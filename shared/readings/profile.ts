import * as say from '../messages/import.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { type DateOrder, isDateOrder } from './date-order.ts';
import type { DecimalMark } from './decimal-mark.ts';
import { headKeys } from './head-keys.ts';

/** What one column of a file is; a field of '' leaves the column out. */
export interface ProfileColumn {
  readonly field: string;
  /** Unit by UCUM code or common name; '' takes the field's own. */
  readonly unit: string;
  /** For a file with several readings on one line: which of them the column belongs to. */
  readonly fire: string;
  readonly state: string;
}

/**
 * How files of one shape are read: the answers that such a file does not give itself. Plain JSON. It fits a file whose
 * head line has all the heads that the profile names.
 */
export interface Profile {
  readonly name: string;
  /** The kind of table that it is for. */
  readonly table: 'readings' | 'register' | 'events' | 'fuel-use';
  /** The one file that it is for, by name; '' for every file of its shape. */
  readonly file: string;
  /** Head as it stands in the file -> what the column is. */
  readonly columns: Readonly<Record<string, ProfileColumn>>;
  /** Field -> value of every row, for what the file does not say ('unit', 'fuel', 'analyzer' ...). */
  readonly constants: Readonly<Record<string, string>>;
  /** Words of the file for fire points and states, e.g. { "gross": "high" }. */
  readonly words: { readonly fire: Readonly<Record<string, string>>; readonly state: Readonly<Record<string, string>> };
  readonly decimal: '' | DecimalMark;
  readonly dateOrder: DateOrder;
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a profile from JSON, with every default filled in. */
export function readProfile(raw: unknown): Outcome<Profile> {
  if (!isObject(raw)) return fail(say.badProfile('profile', 'an object', JSON.stringify(raw) ?? 'nothing'));
  const {
    name = '',
    table = 'readings',
    file = '',
    columns = {},
    constants = {},
    words = {},
    decimal = '',
    dateOrder = '',
  } = raw;
  if (typeof name !== 'string') return fail(say.badProfile('name', 'a text', String(name)));
  if (typeof file !== 'string') return fail(say.badProfile('file', 'the name of a file', String(file)));
  if (table !== 'readings' && table !== 'register' && table !== 'events' && table !== 'fuel-use')
    return fail(say.badProfile('table', '"readings", "register", "events" or "fuel-use"', String(table)));
  if (decimal !== '' && decimal !== '.' && decimal !== ',' && decimal !== 'each')
    return fail(say.badProfile('decimal', '".", "," or "each"', String(decimal)));
  if (!isDateOrder(dateOrder)) return fail(say.badProfile('dateOrder', '"dmy", "mdy" or "ymd"', String(dateOrder)));
  if (!isObject(columns)) return fail(say.badProfile('columns', 'an object of heads', String(columns)));
  if (!isObject(words)) return fail(say.badProfile('words', 'an object with fire and state', String(words)));
  const read: Record<string, ProfileColumn> = Object.create(null);
  for (const [head, column] of Object.entries(columns)) {
    const known = typeof column === 'string' ? { field: column } : column;
    if (!isObject(known) || typeof known.field !== 'string')
      return fail(say.badProfile(`columns["${head}"]`, 'a field name or {"field", "unit"}', JSON.stringify(column)));
    const { field, unit = '', fire = '', state = '' } = known;
    read[head] = { field, unit: String(unit), fire: String(fire), state: String(state) };
  }
  const { fire, state } = words;
  return succeed({
    name,
    table,
    file,
    columns: read,
    constants: texts(constants),
    words: { fire: texts(fire), state: texts(state) },
    decimal,
    dateOrder,
  });
}

/** Reads the profiles of a notebook's cell that are for one kind of table; the others are left to other cells. */
export function readProfiles(raw: unknown, table: Profile['table']): Outcome<readonly Profile[]> {
  const profiles: Profile[] = [];
  for (const entry of Array.isArray(raw) ? raw : []) {
    const profile = readProfile(entry);
    if (profile.status !== 'value') return profile;
    if (profile.value.table === table) profiles.push(profile.value);
  }
  return succeed(profiles);
}

/** The profiles that can be for a file of this name. */
export const profilesFor = (file: string, profiles: readonly Profile[]): readonly Profile[] =>
  profiles.filter((profile) => profile.file === '' || profile.file === file);

/** Whether a line of heads is of the profile's shape. */
export function profileFits(profile: Profile, heads: readonly string[]): boolean {
  const present = new Set([...heads.map((head) => head.trim()), ...headKeys(heads)]);
  return Object.keys(profile.columns).every((head) => present.has(head.trim()));
}

function texts(raw: unknown): Record<string, string> {
  const read: Record<string, string> = Object.create(null);
  if (isObject(raw)) for (const [key, value] of Object.entries(raw)) read[key] = String(value);
  return read;
}
