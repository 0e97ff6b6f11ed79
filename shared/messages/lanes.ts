/** Sentences and names around the fire lanes. */

const FIRE_NAMES: Readonly<Record<string, string>> = {
  high: 'High',
  low: 'Low',
  mid: 'Mid',
  single: 'Single',
  unnamed: 'Unnamed',
};

export const fireName = (fire: string): string => FIRE_NAMES[fire] ?? fire;
/** Where there is room for a few letters only. */
export const shortFireName = (fire: string): string => (fire === 'unnamed' ? 'fire' : fireName(fire).slice(0, 6));
export const supplyName = (): string => 'Supply drop';
export const quantityName = (quantity: string): string => (quantity === 'o2_pct' ? 'O2' : 'CO2');
const FUEL_NAMES: Readonly<Record<string, string>> = { no2_oil: 'No. 2 oil', no6_oil: 'No. 6 oil', lpg: 'LPG' };
export const fuelName = (fuel: string): string => FUEL_NAMES[fuel] ?? plainName(fuel);
export const noBand = (): string => 'no band known';
export const plainName = (code: string): string => code.replaceAll('_', ' ');

export const lanesTitle = (unit: string, place: string): string =>
  place === '' ? `Fire lanes of ${unit}` : `Fire lanes of ${unit}, ${place}`;

export const describeNoHistory = (unit: string): string => `No readings of ${unit} can be drawn.`;

export interface LaneFacts {
  readonly fire: string;
  readonly fuel: string;
  readonly quantity: string;
  readonly readings: number;
  readonly firstDay: string;
  readonly lastDay: string;
  readonly level: number;
  readonly lower: number;
  readonly upper: number;
  /** '' where leaving is not within reach. */
  readonly leavesOn: string;
}

export function describeLane(facts: LaneFacts): string {
  const { fire, fuel, quantity, readings, firstDay, lastDay, level, lower, upper, leavesOn } = facts;
  const where = `${fireName(fire)} fire${fuel === '' ? '' : ` on ${fuelName(fuel)}`}`;
  const count =
    readings === 0
      ? 'no readings'
      : readings === 1
        ? `1 reading on ${firstDay}`
        : `${readings} readings from ${firstDay} to ${lastDay}`;
  const now = Number.isFinite(level) ? `, level now ${level.toFixed(2)} % ${quantityName(quantity)}` : '';
  const band = upper > lower ? `, band ${lower.toFixed(2)} to ${upper.toFixed(2)} %` : ', no band known';
  const leaving = leavesOn === '' ? '' : `, as likely as not outside by ${leavesOn}`;
  return `${where}: ${count}${now}${band}${leaving}.`;
}

export function describeSupply(readings: number, dropPa: number, day: string, limitPa: number): string {
  const limit = Number.isFinite(limitPa) ? `, limit ${limitPa.toFixed(0)} Pa` : ', no limit known';
  return `Gas supply drop: ${readings} ${readings === 1 ? 'reading' : 'readings'}, last ${dropPa.toFixed(0)} Pa on ${day}${limit}.`;
}

export const laneKeyWords = (): Readonly<
  Record<'title' | 'found' | 'left' | 'shown' | 'level' | 'band' | 'leaving' | 'supply', string>
> => ({
  title: 'What the marks of the fire lanes mean',
  found: 'as found',
  left: 'as left',
  shown: 'shown that day',
  level: 'level, 95 % interval',
  band: 'band',
  leaving: 'as likely as not outside',
  supply: 'supply drop',
});
