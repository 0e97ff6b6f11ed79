import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { rowsByValidity } from './lane-keys.ts';
import type { LaneName } from './lane-name.ts';

/** What the register says of one lane and quantity, in that quantity's points; NaN where it says nothing. */
export interface LaneLimits extends LaneName {
  readonly quantity: 'o2_pct' | 'co2_pct';
  readonly target: number;
  readonly settingLower: number;
  readonly settingUpper: number;
  readonly serviceLower: number;
  readonly serviceUpper: number;
}

/** The register's limits in force on a day, by unit. */
export function limitsByUnit(limits: Table | undefined, asOf: number): ReadonlyMap<string, readonly LaneLimits[]> {
  const found = new Map<string, Map<string, LaneLimits>>();
  if (!limits) return new Map();
  const [unit, fuel, fire, quantity] = ['unit', 'fuel', 'fire', 'quantity'].map((name) => textsOf(limits, name));
  const [target, settingLower, settingUpper, serviceLower, serviceUpper] = [
    'target_pct',
    'setting_lower_pct',
    'setting_upper_pct',
    'service_lower_pct',
    'service_upper_pct',
  ].map((name) => numbersOf(limits, name));
  for (const row of rowsByValidity(limits, asOf)) {
    const entry: LaneLimits = {
      unit: textAt(unit, row),
      fuel: textAt(fuel, row),
      fire: textAt(fire, row),
      quantity: textAt(quantity, row) === 'co2_pct' ? 'co2_pct' : 'o2_pct',
      target: target[row],
      settingLower: settingLower[row],
      settingUpper: settingUpper[row],
      serviceLower: serviceLower[row],
      serviceUpper: serviceUpper[row],
    };
    const own = found.get(entry.unit) ?? new Map<string, LaneLimits>();
    own.set([entry.fuel, entry.fire, entry.quantity].join('\u0000'), entry);
    found.set(entry.unit, own);
  }
  return new Map([...found].map(([name, own]) => [name, [...own.values()]]));
}

const ONE_FIRE: readonly string[] = ['single', 'unnamed'];

/** Whether two names are one fire: a unit's single fire is often not named. */
export const sameFire = (a: string, b: string): boolean => a === b || (ONE_FIRE.includes(a) && ONE_FIRE.includes(b));

/**
 * The limits of a lane: of its fuel, else of no named fuel; of its fire, a single fire and an unnamed one being the same.
 * Where the register has both quantities, the one that is asked for, else the one with a target, CO2 first.
 */
export function limitsOfLane(
  limits: readonly LaneLimits[],
  { fuel, fire }: LaneName,
  quantity: 'as_target' | 'o2_pct' | 'co2_pct',
): LaneLimits | undefined {
  const fitting = limits.filter((entry) => sameFire(entry.fire, fire) && (entry.fuel === fuel || entry.fuel === ''));
  const rank = (entry: LaneLimits): number =>
    (entry.fuel === fuel ? 4 : 0) +
    (Number.isFinite(entry.target) ? 2 : 0) +
    (entry.quantity === 'co2_pct' ? 1 : 0) +
    (entry.quantity === quantity ? 8 : 0);
  return fitting.reduce<LaneLimits | undefined>(
    (best, entry) => (best && rank(best) >= rank(entry) ? best : entry),
    undefined,
  );
}
