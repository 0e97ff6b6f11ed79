import { readFuel } from '../../shared/fuels/read-fuel.ts';
import * as say from '../../shared/messages/checks.ts';
import { nearestName } from '../../shared/names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { CHECKS } from './checks.ts';

export interface ChecksParameters {
  /** The cell whose readings are checked; cells that are to use the checked readings name this cell instead. */
  readonly readings: string;
  /** '' where the notebook has no register. */
  readonly register: string;
  /** Whether suspect readings are used in what follows. Impossible values never are. */
  readonly suspects: 'in' | 'out';
  /** Checks that are not made. */
  readonly skip: readonly string[];
  /** Fuels of the user's own, as derive has them: this cell stands before derive and cannot read them there. */
  readonly fuels: readonly unknown[];
}

export function readParameters(raw: unknown): Outcome<ChecksParameters> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const { readings = 'readings', register = 'register', suspects = 'in', skip = [], fuels = [] } = given;
  if (typeof readings !== 'string' || readings === '') return fail(say.noReadings(String(readings)));
  if (typeof register !== 'string') return fail(say.noReadings(String(register)));
  if (suspects !== 'in' && suspects !== 'out') return fail(say.badSwitch(String(suspects)));
  if (!Array.isArray(skip) || !skip.every((name) => typeof name === 'string')) return fail(say.badSkip());
  const strange = skip.find((name) => !Object.hasOwn(CHECKS, name));
  if (strange !== undefined) return fail(say.unknownCheck(strange, nearestName(strange, Object.keys(CHECKS))));
  if (!Array.isArray(fuels)) return fail(say.badFuels());
  for (const raw of fuels) {
    const fuel = readFuel(raw);
    if (fuel.status === 'error') return fuel;
  }
  return succeed({ readings, register, suspects, skip, fuels });
}
