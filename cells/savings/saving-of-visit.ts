import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { efficiencyAt, efficiencySlopes, type HeatReading, REFERENCE_AIR_C } from './reference-efficiency.ts';

/** Found and left of one fire, with the O2 at which they are compared. */
export interface FireHeat {
  readonly fire: string;
  readonly found: HeatReading;
  readonly left: HeatReading;
  readonly foundO2Pct: number;
  readonly leftO2Pct: number;
  readonly sameAnalyzer: boolean;
}

/** What one visit saved, in percent of fuel; the interval is 90 %. Unknown is NaN. */
export interface Saving {
  readonly foundPct: number;
  readonly leftPct: number;
  readonly savedPct: number;
  readonly lowerPct: number;
  readonly upperPct: number;
  /** The same with the flue as hot as found: what the change of O2 alone saved. */
  readonly sameFluePct: number;
  /** Standard uncertainty of savedPct, at the shares of fuel in `parts`. */
  readonly sdPct: number;
  /** The fires that it is made of, each with the share of fuel that it counts with. */
  readonly parts: readonly (FireSaving & { readonly weight: number })[];
}

/** What two readings of one analyzer on one day differ by, and what two analyzers add (common practice, no source). */
const REPEAT = { o2: 0.1, kelvin: 1.2 } as const;
const OTHER_ANALYZER = { o2: 0.2, kelvin: 1.5 } as const;
/** Normal quantile of a two-sided 90 % interval. */
const Z90 = 1.6448536;
const SHARES_UNKNOWN = [0, 0.5, 1] as const;

/** What one fire saved. Efficiencies at the air of the comparison; `saved` and its uncertainties are shares, 0..1. */
export interface FireSaving {
  readonly fire: string;
  readonly foundPct: number;
  readonly leftPct: number;
  readonly saved: number;
  readonly sd: number;
  /** The parts of sd that come from O2 and from the flue temperature, of both readings together. */
  readonly sdOfO2: number;
  readonly sdOfFlue: number;
  readonly sameFlue: number;
}

/**
 * Sum over the fires of f (1 - found/left), f the share of fuel burnt at the fire (DOE Steam Tip Sheet 4, fire by fire).
 * With an unknown share of low fire the middle stands at one half and the interval spans none to all of it.
 * @param lowFireShare 0..1, NaN where unknown; @param reference whether readings are brought to reference air
 */
export function savingOfVisit(
  fires: readonly FireHeat[],
  fuel: FuelProperties,
  lowFireShare: number,
  reference: boolean,
): Saving {
  const known = fires.map((fire) => fireSaving(fire, fuel, reference)).filter(({ saved }) => Number.isFinite(saved));
  if (known.length === 0) return UNKNOWN;
  const shares = Number.isNaN(lowFireShare) && isWeighted(known) ? SHARES_UNKNOWN : [lowFireShare];
  const sums = shares.map((share) => weigh(known, share));
  const middle = sums[Math.floor(sums.length / 2)];
  return {
    ...middle,
    lowerPct: Math.min(...sums.map(({ savedPct, sdPct }) => savedPct - Z90 * sdPct)),
    upperPct: Math.max(...sums.map(({ savedPct, sdPct }) => savedPct + Z90 * sdPct)),
  };
}

const UNKNOWN: Saving = {
  foundPct: Number.NaN,
  leftPct: Number.NaN,
  savedPct: Number.NaN,
  lowerPct: Number.NaN,
  upperPct: Number.NaN,
  sameFluePct: Number.NaN,
  sdPct: Number.NaN,
  parts: [],
};

const isWeighted = (fires: readonly FireSaving[]): boolean =>
  fires.length > 1 && fires.some(({ fire }) => fire === 'low');

function weigh(fires: readonly FireSaving[], lowFireShare: number): Omit<Saving, 'lowerPct' | 'upperPct'> {
  const low = fires.filter(({ fire }) => fire === 'low').length;
  const others = fires.length - low;
  const weightOf = ({ fire }: FireSaving): number => {
    if (!isWeighted(fires)) return 1 / fires.length;
    return fire === 'low' ? lowFireShare / low : (1 - lowFireShare) / others;
  };
  const sum = (of: (fire: FireSaving) => number): number =>
    fires.reduce((total, fire) => total + weightOf(fire) * of(fire), 0);
  return {
    foundPct: sum(({ foundPct }) => foundPct),
    leftPct: sum(({ leftPct }) => leftPct),
    savedPct: 100 * sum(({ saved }) => saved),
    sameFluePct: 100 * sum(({ sameFlue }) => sameFlue),
    sdPct: 100 * Math.sqrt(fires.reduce((total, fire) => total + (weightOf(fire) * fire.sd) ** 2, 0)),
    parts: fires.map((fire) => ({ ...fire, weight: weightOf(fire) })),
  };
}

function fireSaving(fire: FireHeat, fuel: FuelProperties, reference: boolean): FireSaving {
  const { found, left } = fire;
  const at = (reading: HeatReading, o2: number): number =>
    reference && Number.isFinite(o2) && Number.isFinite(reading.o2Pct)
      ? efficiencyAt(reading, o2, REFERENCE_AIR_C, fuel)
      : reading.efficiencyPct;
  const [foundPct, leftPct] = [at(found, fire.foundO2Pct), at(left, fire.leftO2Pct)];
  const air = Number.isFinite(found.airC) ? found.airC : REFERENCE_AIR_C;
  // Both as found in everything but the O2 that was left.
  const sameFlueLeft =
    foundPct +
    efficiencyAt(found, reference ? fire.leftO2Pct : left.o2Pct, air, fuel) -
    efficiencyAt(found, reference ? fire.foundO2Pct : found.o2Pct, air, fuel);
  const { perO2, perKelvin } = efficiencySlopes(left, fuel);
  const [o2, kelvin] = [REPEAT, ...(fire.sameAnalyzer ? [] : [OTHER_ANALYZER])].reduce(
    ([a, b], part) => [a + part.o2 ** 2, b + part.kelvin ** 2],
    [0, 0],
  );
  const sdPoints = Math.sqrt(2 * (perO2 ** 2 * o2 + perKelvin ** 2 * kelvin));
  return {
    fire: fire.fire,
    foundPct,
    leftPct,
    saved: 1 - foundPct / leftPct,
    sd: sdPoints / leftPct,
    sdOfO2: (perO2 * Math.sqrt(2 * o2)) / leftPct,
    sdOfFlue: (perKelvin * Math.sqrt(2 * kelvin)) / leftPct,
    sameFlue: 1 - foundPct / sameFlueLeft,
  };
}
