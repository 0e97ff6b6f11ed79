import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { DATE_ORDER_NAMES, type DateOrder, isDateOrder } from '../../shared/readings/date-order.ts';
import { NAMINGS } from '../../shared/readings/naming.ts';
import { type Profile, readProfiles } from '../../shared/readings/profile.ts';

export interface ReadingsParameters {
  /** Data files, in the order in which they count as sources. */
  readonly files: readonly string[];
  /** The register cell whose spelling of the unit ids is used; '' where the notebook has none. */
  readonly register: string;
  /** Answers for files that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: DateOrder;
  /** What the single printout of a visit is; '' leaves its state unknown. */
  readonly singleReading: '' | 'as_found' | 'as_left';
  /** What becomes of a reading that stands in two files with other values; '' asks. */
  readonly revised: '' | 'keep_last' | 'keep_both';
  /** What the user accepts of what evidence proposes: 'fires', 'states', 'fuels', 'units', or of one unit 'fires:B-07'. */
  readonly accept: readonly string[];
  /** Fuels that the notebook defines beside the usual ones. */
  readonly fuels: readonly string[];
  /** How files of known shapes are read; the first that fits is used. */
  readonly profiles: readonly Profile[];
}

/** Kinds of proposals; `units` are near misses of registered ids. */
export const ACCEPTABLE: readonly string[] = [...NAMINGS, 'units'];

export function readParameters(raw: unknown): Outcome<ReadingsParameters> {
  const given = (raw ?? {}) as Partial<Record<keyof ReadingsParameters | 'profile', unknown>>;
  const {
    files = [],
    register = 'register',
    dateOrder = '',
    singleReading = '',
    revised = '',
    fuels = [],
    accept = [],
  } = given;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('readings'));
  if (typeof register !== 'string') return fail(say.badCell('readings', 'register'));
  if (!isDateOrder(dateOrder))
    return fail(say.badChoice('readings', 'dateOrder', String(dateOrder), DATE_ORDER_NAMES.join(', ')));
  if (singleReading !== '' && singleReading !== 'as_found' && singleReading !== 'as_left')
    return fail(say.badChoice('readings', 'singleReading', String(singleReading), 'as_found, as_left'));
  if (revised !== '' && revised !== 'keep_last' && revised !== 'keep_both')
    return fail(say.badChoice('readings', 'revised', String(revised), 'keep_last, keep_both'));
  if (!Array.isArray(fuels) || !fuels.every((fuel) => typeof fuel === 'string')) return fail(say.badFuels('readings'));
  if (!Array.isArray(accept) || !accept.every((one) => typeof one === 'string')) return fail(say.badAccept('readings'));
  const strange = accept.find((one: string) => !ACCEPTABLE.includes(one.replace(/:.*$/s, '')));
  if (strange !== undefined) return fail(say.unknownAccept('readings', strange, ACCEPTABLE.join(', ')));
  const profiles = readProfiles(given.profiles ?? (given.profile ? [given.profile] : []), 'readings');
  if (profiles.status !== 'value') return profiles;
  return succeed({ files, register, dateOrder, singleReading, revised, fuels, accept, profiles: profiles.value });
}
