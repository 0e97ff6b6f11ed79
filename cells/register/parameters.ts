import * as say from '../../shared/messages/import.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

export interface RegisterParameters {
  readonly files: readonly string[];
  /** Answers for dates that do not say whether day or month stands first; '' asks. */
  readonly dateOrder: '' | 'dmy' | 'mdy';
  /** Fuels that the notebook defines beside the usual ones. */
  readonly fuels: readonly string[];
}

export function readParameters(raw: unknown): Outcome<RegisterParameters> {
  const { files = [], dateOrder = '', fuels = [] } = (raw ?? {}) as Partial<Record<keyof RegisterParameters, unknown>>;
  if (!Array.isArray(files) || !files.every((key) => typeof key === 'string')) return fail(say.badFiles('register'));
  if (dateOrder !== '' && dateOrder !== 'dmy' && dateOrder !== 'mdy')
    return fail(say.badChoice('register', 'dateOrder', String(dateOrder), 'dmy, mdy'));
  if (!Array.isArray(fuels) || !fuels.every((fuel) => typeof fuel === 'string')) return fail(say.badFuels('register'));
  return succeed({ files, dateOrder, fuels });
}
