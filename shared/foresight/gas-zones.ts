import { monthOfDay } from './month-of-day.ts';

/** Gas from a network, of which a zone's units all get the same: bottled gas and oil change by the delivery, each its own. */
const isPiped = (fuel: string): boolean => fuel === 'methane' || fuel.startsWith('natural_gas');

export interface LaneGas {
  readonly fuel: string;
  /** The register's gas zone; '' where it has none: all such units are taken as one zone. */
  readonly zone: string;
  /** yes, no or ''. */
  readonly trim: string;
}

/** A calendar month in a gas zone; the month as its number since 1970-01. */
export interface ZoneMonth {
  readonly zone: string;
  readonly month: number;
}

/** Code of every reading's zone and month, -1 where the gas of the month cannot move it; and what the codes stand for. */
export function zoneMonthsOf(
  day: Float64Array,
  lane: Int32Array,
  gas: readonly LaneGas[],
): { codes: Int32Array; list: ZoneMonth[] } {
  const list: ZoneMonth[] = [];
  const known = new Map<string, number>();
  const codes = Int32Array.from(day, (on, row) => {
    const { fuel, zone, trim } = gas[lane[row]];
    if (!isPiped(fuel) || trim === 'yes') return -1;
    const month = monthOfDay(on);
    const key = `${month} ${zone}`;
    let code = known.get(key);
    if (code === undefined) {
      code = list.length;
      known.set(key, code);
      list.push({ zone, month });
    }
    return code;
  });
  return { codes, list };
}
