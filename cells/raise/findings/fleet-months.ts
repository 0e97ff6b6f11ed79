import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import type { Table } from '../../../shared/table/table.ts';

/** A month in which the fleet as a whole read leaner or richer than its own years say: gas or weather, not the units. */
export interface FleetMonth {
  /** YYYY-MM */
  readonly month: string;
  readonly units: number;
  /** Mean departure of the units, in points of O2, positive where lean. The fit follows readings, so the true one is larger. */
  readonly leanerO2: number;
}

/** Fewer units than this are no fleet; one analyzer alone is the analyzer's doing. */
const LEAST_UNITS = 6;
const LEAST_ANALYZERS = 2;
/** Standard errors beyond which a month is called: with hundreds of months none is by chance. */
const CLEAR = 4;
/** Points of O2 below which it matters to nobody. */
const MATTERS_O2 = 0.1;
/** Points of O2 for a point of CO2, near enough for any gas or oil. */
const O2_PER_CO2 = 1.7;

/**
 * Departures of as-found readings from the fitted level of their lane, averaged over each unit's visit and then over the
 * units read in a calendar month, against what units otherwise depart.
 * @param analyzersIn how many analyzers were used in a month
 */
export function fleetMonths(points: Table, analyzersIn: (month: string) => number): FleetMonth[] {
  const byMonth = unitDepartures(points);
  const all = [...byMonth.values()].flatMap((units) => [...units.values()]);
  const spread = spreadOf(all);
  return [...byMonth]
    .filter(([, units]) => units.size >= LEAST_UNITS)
    .map(([month, units]) => ({ month, units: units.size, leanerO2: mean([...units.values()]) }))
    .filter(
      ({ units, leanerO2 }) =>
        Math.abs(leanerO2) > MATTERS_O2 && Math.abs(leanerO2) > (CLEAR * spread) / Math.sqrt(units),
    )
    .filter(({ month }) => analyzersIn(month) >= LEAST_ANALYZERS)
    .sort((a, b) => (a.month < b.month ? -1 : 1));
}

const MONTH_NAMES = new Map<number, string>();

/** YYYY-MM of a day since 1970-01-01; '' for none. */
export function monthOf(day: number): string {
  if (!Number.isFinite(day)) return '';
  const whole = Math.floor(day);
  let name = MONTH_NAMES.get(whole);
  if (name === undefined) {
    name = new Date(whole * 86_400_000).toISOString().slice(0, 7);
    MONTH_NAMES.set(whole, name);
  }
  return name;
}

/** Month, then unit: the mean departure of its as-found readings from their lanes, in O2, positive where lean. */
function unitDepartures(points: Table): Map<string, Map<string, number>> {
  const [unit, state, used, quantity] = ['unit', 'state', 'used', 'quantity'].map((name) => textsOf(points, name));
  const [day, value, level] = ['day', 'value', 'level'].map((name) => numbersOf(points, name));
  const found = new Map<string, Map<string, Sum>>();
  for (let row = 0; row < points.rows; row++) {
    if (textAt(state, row) !== 'as_found' || textAt(used, row) === 'no') continue;
    const apart = value[row] - level[row];
    if (!Number.isFinite(apart)) continue;
    const month = monthOf(day[row]);
    const units = found.get(month) ?? new Map<string, Sum>();
    found.set(month, units);
    const leaner = textAt(quantity, row) === 'o2_pct' ? apart : -apart * O2_PER_CO2;
    const own = units.get(textAt(unit, row));
    if (own) {
      own.sum += leaner;
      own.count++;
    } else units.set(textAt(unit, row), { sum: leaner, count: 1 });
  }
  const means = (units: Map<string, Sum>): Map<string, number> =>
    new Map([...units].map(([name, { sum, count }]) => [name, sum / count]));
  return new Map([...found].map(([month, units]) => [month, means(units)]));
}

interface Sum {
  sum: number;
  count: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Standard deviation by the median of absolute values (normal: 1.4826 times it), which a few odd months do not move. */
function spreadOf(values: readonly number[]): number {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  return sizes.length === 0 ? Number.NaN : 1.4826 * sizes[Math.floor(sizes.length / 2)];
}
