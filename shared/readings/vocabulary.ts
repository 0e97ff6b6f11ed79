import { type Field, READING_FIELDS } from './fields.ts';
import { HEAD_WORDS } from './head-words.ts';
import { plainWords } from './plain-words.ts';
import type { Profile } from './profile.ts';

/** What the columns of one kind of table can be, and by which heads they are known. */
export interface Vocabulary {
  /** The kind of table, as profiles name it. */
  readonly table: Profile['table'];
  readonly fields: ReadonlyMap<string, Field>;
  /** The project's own column names, lower case -> field and UCUM code. */
  readonly own: ReadonlyMap<string, { readonly field: string; readonly unit: string }>;
  /** Plain head -> field name. */
  readonly heads: ReadonlyMap<string, string>;
}

export function vocabularyOf(
  table: Profile['table'],
  fields: readonly Field[],
  heads: ReadonlyMap<string, string>,
): Vocabulary {
  const own = new Map<string, { field: string; unit: string }>();
  for (const { name, unit, suffixes } of fields) {
    if (!suffixes) own.set(name.toLowerCase(), { field: name, unit });
    for (const [suffix, code] of Object.entries(suffixes ?? {}))
      own.set(`${name}_${suffix}`.toLowerCase(), { field: name, unit: code });
  }
  const named = new Map(fields.map(({ name }) => [plainWords(name), name] as const));
  return {
    table,
    fields: new Map(fields.map((field) => [field.name, field])),
    own,
    heads: new Map([...named, ...heads]),
  };
}

export const READINGS_VOCABULARY: Vocabulary = vocabularyOf('readings', READING_FIELDS, HEAD_WORDS);
