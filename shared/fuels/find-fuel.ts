import { hydrogenOverAll, unknownFuel } from '../messages/fuels.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../outcome.ts';
import { blendWithHydrogen } from './blend.ts';
import type { Fuel } from './fuel.ts';
import { FUELS } from './fuel-list.ts';

const BLEND = /^natural_gas_h2_(\d{1,3}(?:\.\d+)?)$/;

/**
 * The fuel of a name: one of the list, a hydrogen blend (natural_gas_h2_20 holds 20 % hydrogen by volume), or one of
 * the user's own. Case and the space or hyphen between words do not matter.
 */
export function findFuel(name: string, own: readonly Fuel[] = []): Outcome<Fuel> {
  const key = name
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, '_');
  const known = [...own, ...FUELS];
  const found = known.find((fuel) => fuel.name === key);
  if (found) return succeed(found);
  const share = BLEND.exec(key)?.[1];
  if (share !== undefined)
    return Number(share) <= 100 ? succeed(blendWithHydrogen(Number(share))) : fail(hydrogenOverAll(name));
  const names = known.map((fuel) => fuel.name);
  return fail(unknownFuel(name, nearestName(key, names), names.join(', ')));
}
