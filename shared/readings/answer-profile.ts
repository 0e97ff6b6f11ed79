import type { DecimalMark } from './decimal-mark.ts';
import type { ColumnMapping } from './mapping.ts';
import type { Profile, ProfileColumn } from './profile.ts';

/** What one answer of the user adds to how a file is read. */
export interface ProfileAnswer {
  readonly columns?: Readonly<Record<string, ProfileColumn>>;
  readonly constants?: Readonly<Record<string, string>>;
  readonly decimal?: DecimalMark;
  readonly words?: Partial<Profile['words']>;
}

/** A column of a file and what it was taken for. */
export type SettledColumn = Pick<ColumnMapping, 'key' | 'field' | 'unit' | 'fire' | 'state'>;

/**
 * The profile that an answer makes: the one that read the file so far, or a new one of the file's name, with the answer
 * in it. It names every column that is settled, so that it fits files of this shape only.
 */
export function answerProfile(
  table: Profile['table'],
  file: string,
  profile: Profile | undefined,
  settled: readonly SettledColumn[],
  answer: ProfileAnswer,
): Profile {
  const known = settled
    .filter(({ field }) => field !== '')
    .map(({ key, field, unit, fire, state }) => [key, { field, unit, fire, state }] as const);
  return {
    name: profile?.name || file,
    table,
    file: profile?.file ?? '',
    columns: { ...Object.fromEntries(known), ...profile?.columns, ...answer.columns },
    constants: { ...profile?.constants, ...answer.constants },
    words: {
      fire: { ...profile?.words?.fire, ...answer.words?.fire },
      state: { ...profile?.words?.state, ...answer.words?.state },
    },
    decimal: answer.decimal ?? profile?.decimal ?? '',
    dateOrder: profile?.dateOrder ?? '',
  };
}

/** What a profile with one answer looks like; a profile without a kind of table is one of readings. */
export const profileText = (table: Profile['table'], answer: object): string =>
  JSON.stringify(table === 'readings' ? answer : { table, ...answer });
