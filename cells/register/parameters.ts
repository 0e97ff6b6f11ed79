import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { type Profile, readProfiles } from '../../shared/readings/profile.ts';

export interface RegisterParameters {
  readonly files: readonly string[];
  /** Answers for dates that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: '' | 'dmy' | 'mdy';
  /** Fuels that the notebook defines beside the usual ones. */
  readonly fuels: readonly string[];
  /** How files of known shapes are read; the first that fits is used. */
  readonly profiles: readonly Profile[];
}

export function readParameters(raw: unknown): Outcome<RegisterParameters> {
  const given = (raw ?? {}) as Partial<Record<keyof RegisterParameters, unknown>>;
  const { files = [], dateOrder = '', fuels = [] } = given;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('register'));
  if (dateOrder !== '' && dateOrder !== 'dmy' && dateOrder !== 'mdy')
    return fail(say.badChoice('register', 'dateOrder', String(dateOrder), 'dmy, mdy'));
  if (!Array.isArray(fuels) || !fuels.every((fuel) => typeof fuel === 'string')) return fail(say.badFuels('register'));
  const profiles = readProfiles(given.profiles, 'register');
  if (profiles.status !== 'value') return profiles;
  return succeed({ files, dateOrder, fuels, profiles: profiles.value });
}
