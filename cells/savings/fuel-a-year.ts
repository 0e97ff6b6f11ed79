import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { rowsByKey } from '../../shared/table/rows-by-key.ts';
import type { Table } from '../../shared/table/table.ts';

/** What a unit burns of a fuel in a year. Energy gross, kWh; price per kWh; NaN where unknown. */
export interface FuelAYear {
  readonly energyKWh: number;
  readonly pricePerKWh: number;
  /** metered, register, or '' where nothing is known. */
  readonly source: string;
}

/** A meter must cover this much of a year before it is stretched to one: heating is not spread evenly. */
const LEAST_DAYS = 330;

/** Metered use of the last year before `asOf` where there is enough of it, else what the register says. */
export function fuelAYear(
  use: Table | undefined,
  economics: Table | undefined,
  asOf: number,
): (unit: string, fuel: string) => FuelAYear {
  const metered = meteredUse(use, asOf);
  const registered = registeredUse(economics);
  return (unit, fuel) => {
    const own = registered.get(`${unit}\u0000${fuel}`) ?? registered.get(`${unit}\u0000`);
    const meter = metered.get(`${unit}\u0000${fuel}`) ?? metered.get(`${unit}\u0000`);
    if (!meter) return own ?? { energyKWh: Number.NaN, pricePerKWh: Number.NaN, source: '' };
    return Number.isFinite(meter.pricePerKWh) ? meter : { ...meter, pricePerKWh: own?.pricePerKWh ?? Number.NaN };
  };
}

function registeredUse(economics: Table | undefined): Map<string, FuelAYear> {
  const found = new Map<string, FuelAYear>();
  if (!economics) return found;
  const [unit, fuel] = [textsOf(economics, 'unit'), textsOf(economics, 'fuel')];
  const energy = numbersOf(economics, 'annual_fuel_kWh');
  const price = numbersOf(economics, 'fuel_price_per_kWh');
  for (let row = 0; row < economics.rows; row++)
    found.set(`${textAt(unit, row)}\u0000${textAt(fuel, row)}`, {
      energyKWh: energy[row],
      pricePerKWh: price[row],
      source: Number.isFinite(energy[row]) ? 'register' : '',
    });
  return found;
}

function meteredUse(use: Table | undefined, asOf: number): Map<string, FuelAYear> {
  const found = new Map<string, FuelAYear>();
  if (!use) return found;
  const [from, to, energy, cost] = ['from', 'to', 'energy_kWh', 'cost'].map((name) => numbersOf(use, name));
  const usable = (row: number): boolean => Number.isFinite(from[row] + to[row] + energy[row]) && to[row] <= asOf;
  for (const [name, rows] of rowsByKey(use, ['unit', 'fuel'])) {
    // Latest first, until a year is covered.
    const latest = rows.filter(usable).sort((a, b) => to[b] - to[a]);
    let [days, energyKWh, paid, paidKWh] = [0, 0, 0, 0];
    for (const row of latest) {
      if (days >= DAYS_PER_YEAR - 1) break;
      days += to[row] - from[row] + 1;
      energyKWh += energy[row];
      if (Number.isFinite(cost[row])) [paid, paidKWh] = [paid + cost[row], paidKWh + energy[row]];
    }
    if (days >= LEAST_DAYS)
      found.set(name, {
        energyKWh: (energyKWh * DAYS_PER_YEAR) / days,
        pricePerKWh: paidKWh > 0 ? paid / paidKWh : Number.NaN,
        source: 'metered',
      });
  }
  return found;
}
