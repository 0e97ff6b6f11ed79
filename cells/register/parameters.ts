import * as say from '../../shared/messages/import.ts';
import * as gaps from '../../shared/messages/register-gaps.ts';
import { nearestName } from '../../shared/names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { DATE_ORDER_NAMES, type DateOrder, isDateOrder } from '../../shared/readings/date-order.ts';
import { type Profile, readProfiles } from '../../shared/readings/profile.ts';
import { REGISTER_VOCABULARY } from '../../shared/readings/register-vocabulary.ts';
import type { Filled } from './filled-row.ts';

export interface RegisterParameters {
  readonly files: readonly string[];
  /** Answers for dates that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: DateOrder;
  /** Fuels that the notebook defines beside the usual ones. */
  readonly fuels: readonly string[];
  /** How files of known shapes are read; the first that fits is used. */
  readonly profiles: readonly Profile[];
  /** Gaps of the file that somebody filled on the page. */
  readonly filled: readonly Filled[];
}

export function readParameters(raw: unknown): Outcome<RegisterParameters> {
  const given = (raw ?? {}) as Partial<Record<keyof RegisterParameters, unknown>>;
  const { files = [], dateOrder = '', fuels = [] } = given;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('register'));
  if (!isDateOrder(dateOrder))
    return fail(say.badChoice('register', 'dateOrder', String(dateOrder), DATE_ORDER_NAMES.join(', ')));
  if (!Array.isArray(fuels) || !fuels.every((fuel) => typeof fuel === 'string')) return fail(say.badFuels('register'));
  const filled = readFilled(given.filled ?? []);
  if (filled.status !== 'value') return filled;
  const profiles = readProfiles(given.profiles, 'register');
  if (profiles.status !== 'value') return profiles;
  return succeed({ filled: filled.value, files, dateOrder, fuels, profiles: profiles.value });
}

function readFilled(raw: unknown): Outcome<readonly Filled[]> {
  if (!Array.isArray(raw)) return fail(gaps.badFilled());
  for (const entry of raw as readonly (Partial<Filled> | null)[]) {
    if (![entry?.unit, entry?.field, entry?.value].every((part) => typeof part === 'string'))
      return fail(gaps.badFilled());
    const field = entry?.field ?? '';
    if (!REGISTER_VOCABULARY.fields.has(field))
      return fail(gaps.unknownField(field, nearestName(field, REGISTER_VOCABULARY.fields.keys())));
  }
  return succeed(raw as readonly Filled[]);
}
