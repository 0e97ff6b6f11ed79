import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { DATE_ORDER_NAMES, type DateOrder, isDateOrder } from '../../shared/readings/date-order.ts';
import { type Profile, readProfiles } from '../../shared/readings/profile.ts';

export interface FuelUseParameters {
  readonly files: readonly string[];
  /** The register cell whose spelling of the unit ids is used and whose fuel stands in; '' where there is none. */
  readonly register: string;
  /** Answers for dates that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: DateOrder;
  /** Fuels that the notebook defines beside the usual ones. */
  readonly fuels: readonly string[];
  /** How files of known shapes are read; the first that fits is used. */
  readonly profiles: readonly Profile[];
}

export function readParameters(raw: unknown): Outcome<FuelUseParameters> {
  const given = (raw ?? {}) as Partial<Record<keyof FuelUseParameters, unknown>>;
  const { files = [], register = 'register', dateOrder = '', fuels = [] } = given;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('fuel-use'));
  if (typeof register !== 'string') return fail(say.badCell('fuel-use', 'register'));
  if (!isDateOrder(dateOrder))
    return fail(say.badChoice('fuel-use', 'dateOrder', String(dateOrder), DATE_ORDER_NAMES.join(', ')));
  if (!Array.isArray(fuels) || !fuels.every((fuel) => typeof fuel === 'string')) return fail(say.badFuels('fuel-use'));
  const profiles = readProfiles(given.profiles, 'fuel-use');
  if (profiles.status !== 'value') return profiles;
  return succeed({ files, register, dateOrder, fuels, profiles: profiles.value });
}
