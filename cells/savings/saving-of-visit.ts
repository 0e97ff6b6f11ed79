import { type CombinedTerm, combinedSd } from '../../shared/combustion/combined-uncertainty.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';
import { efficiencyAt, type HeatReading, MISSING_AIR_C } from './reference-efficiency.ts';
import { type HeatKeys, type HeatSpread, heatTerm } from './saving-terms.ts';

/** Found and left of one fire, with the O2 at which they are compared. */
export interface FireHeat {
  readonly fire: string;
  readonly found: HeatReading;
  readonly left: HeatReading;
  readonly foundO2Pct: number;
  readonly leftO2Pct: number;
  readonly foundSpread: HeatSpread;
  readonly leftSpread: HeatSpread;
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
  /** Both readings with what is uncertain in them, for `saved`. */
  readonly terms: readonly CombinedTerm[];
  readonly sameFlue: number;
}

/**
 * Sum over the fires of f (1 - found/left), f the share of fuel burnt at the fire (DOE Steam Tip Sheet 4, fire by fire).
 * With an unknown share of low fire the middle stands at one half and the interval spans none to all of it.
 * @param lowFireShare 0..1, NaN where unknown; @param referenceAirC air that readings are brought to, NaN where they stay as measured
 */
export function savingOfVisit(
  fires: readonly FireHeat[],
  fuel: FuelProperties,
  lowFireShare: number,
  referenceAirC: number,
  keys: HeatKeys,
): Saving {
  const known = fires
    .map((fire) => fireSaving(fire, fuel, referenceAirC, keys))
    .filter(({ saved }) => Number.isFinite(saved));
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
  const terms = fires.flatMap((fire) => weighted(fire.terms, weightOf(fire)));
  return {
    foundPct: sum(({ foundPct }) => foundPct),
    leftPct: sum(({ leftPct }) => leftPct),
    savedPct: 100 * sum(({ saved }) => saved),
    sameFluePct: 100 * sum(({ sameFlue }) => sameFlue),
    sdPct: 100 * combinedSd(terms),
    parts: fires.map((fire) => ({ ...fire, weight: weightOf(fire) })),
  };
}

/**
 * The parts of a saving's sdPct that come of each input, found and left of all fires together; their squares add up to
 * its. Made when somebody looks at the working: a fleet has thousands of savings.
 */
export function savingBudget({ parts }: Saving): { readonly input: string; readonly sdPct: number }[] {
  const terms = parts.flatMap((part) => weighted(part.terms, part.weight));
  return inputsOf(terms).map((input) => ({
    input,
    sdPct: 100 * combinedSd(terms.map((term) => only(term, input))),
  }));
}

/** The same numbers in a sum in which they weigh `factor` as much. */
export const weighted = (terms: readonly CombinedTerm[], factor: number): CombinedTerm[] =>
  terms.map((term) => ({ ...term, weight: term.weight * factor }));

const inputsOf = (terms: readonly CombinedTerm[]): string[] => [
  ...new Set(terms.flatMap(({ budget }) => budget.map(({ input }) => input))),
];
const only = (term: CombinedTerm, input: string): CombinedTerm => ({
  ...term,
  budget: term.budget.filter((part) => part.input === input),
});

function fireSaving(fire: FireHeat, fuel: FuelProperties, referenceAirC: number, keys: HeatKeys): FireSaving {
  const reference = Number.isFinite(referenceAirC);
  const { found, left } = fire;
  const at = (reading: HeatReading, o2: number): number =>
    reference && Number.isFinite(o2) && Number.isFinite(reading.o2Pct)
      ? efficiencyAt(reading, o2, referenceAirC, fuel)
      : reading.efficiencyPct;
  const [foundPct, leftPct] = [at(found, fire.foundO2Pct), at(left, fire.leftO2Pct)];
  const air = Number.isFinite(found.airC) ? found.airC : MISSING_AIR_C;
  // Both as found in everything but the O2 that was left.
  const sameFlueLeft =
    foundPct +
    efficiencyAt(found, reference ? fire.leftO2Pct : left.o2Pct, air, fuel) -
    efficiencyAt(found, reference ? fire.foundO2Pct : found.o2Pct, air, fuel);
  // saved = 1 - found / left, both readings with their errors in points of efficiency.
  const compared = reference ? [fire.foundO2Pct, fire.leftO2Pct] : [found.o2Pct, left.o2Pct];
  const terms = [
    heatTerm(found, fire.foundSpread, compared[0], referenceAirC, fuel, keys, -1 / leftPct),
    heatTerm(left, fire.leftSpread, compared[1], referenceAirC, fuel, keys, foundPct / (leftPct * leftPct)),
  ];
  return {
    fire: fire.fire,
    foundPct,
    leftPct,
    saved: 1 - foundPct / leftPct,
    sd: combinedSd(terms),
    terms,
    sameFlue: 1 - foundPct / sameFlueLeft,
  };
}
