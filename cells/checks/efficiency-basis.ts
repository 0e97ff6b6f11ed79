import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';

/** A printed efficiency with what it follows from. */
export interface EfficiencyReading {
  readonly row: number;
  readonly printedPct: number;
  readonly o2Pct: number;
  readonly flueC: number;
  readonly airC: number;
  readonly fuel: Pick<FuelProperties, 'co2maxPct' | 'netOverGross'>;
}

/** What the printed efficiencies of one analyzer fit instead: another fuel, or temperatures on the other scale. */
export type Explanation =
  | { readonly kind: 'fuel'; readonly fuel: string; readonly basis: 'gross' | 'net' }
  | { readonly kind: 'scale'; readonly basis: 'gross' | 'net' };

/**
 * Siegert's flue loss on net basis, % = (flue - air) (A / (21 - O2) + B), with the constants of the German ordinance on
 * small firing installations (source `siegert1BImSchV`); above the dew point only.
 */
const SIEGERT: readonly (readonly [below: number, a: number, b: number])[] = [
  [12.8, 0.66, 0.009],
  [14.6, 0.63, 0.008],
  [Number.POSITIVE_INFINITY, 0.68, 0.007],
];
/** Two efficiencies within this are the same: O2 to 0.3, temperatures to 3 K, another fuel table. */
const SAME_PCT = 1.8;
/** An explanation has to fit closer, and nearly everywhere. */
const FITS_PCT = 1.2;
const FITS_SHARE = 0.8;
const LEAST_READINGS = 4;
/** Combustion air that temperatures on the right scale would have, °C. */
const LIKELY_AIR_C = [5, 45] as const;

/** CO2max and net over gross heating value of the fuels that analyzers offer, by stoichiometry. */
const FUELS: Readonly<Record<string, EfficiencyReading['fuel']>> = {
  natural_gas: { co2maxPct: 11.9, netOverGross: 0.902 },
  propane: { co2maxPct: 13.7, netOverGross: 0.921 },
  no2_oil: { co2maxPct: 15.4, netOverGross: 0.938 },
};

/** Efficiency on both bases; for gross the latent heat of all water leaves with the gas. */
export function bothBases({ o2Pct, flueC, airC, fuel }: Omit<EfficiencyReading, 'row' | 'printedPct'>): {
  readonly grossPct: number;
  readonly netPct: number;
} {
  const [, a, b] = SIEGERT.find(([below]) => fuel.co2maxPct < below) ?? SIEGERT[0];
  const netPct = 100 - (flueC - airC) * (a / (21 - o2Pct) + b);
  return { grossPct: netPct * fuel.netOverGross, netPct };
}

/** On which basis an efficiency was printed; 'both' where the two lie too close to tell. */
export function efficiencyBasis(reading: EfficiencyReading): 'gross' | 'net' | 'both' | 'neither' {
  const { grossPct, netPct } = bothBases(reading);
  const isNet = Math.abs(reading.printedPct - netPct) <= SAME_PCT;
  const isGross = Math.abs(reading.printedPct - grossPct) <= SAME_PCT;
  if (isNet) return isGross ? 'both' : 'net';
  return isGross ? 'gross' : 'neither';
}

/** The one cause that explains nearly all of an analyzer's strange efficiencies; undefined where there is none. */
export function explainEfficiency(readings: readonly EfficiencyReading[]): Explanation | undefined {
  if (readings.length < LEAST_READINGS) return undefined;
  const candidates = (['net', 'gross'] as const).flatMap((basis): readonly Candidate[] => [
    ...Object.entries(FUELS).map(([fuel, properties]) => ({
      cause: { kind: 'fuel', fuel, basis } as const,
      of: (reading: EfficiencyReading) => ({ ...reading, fuel: properties }),
    })),
    { cause: { kind: 'scale', basis } as const, of: fromFahrenheit },
    { cause: { kind: 'scale', basis } as const, of: fromCelsius },
  ]);
  const shareFitting = ({ cause, of }: Candidate): number =>
    readings.filter((reading) => {
      const told = of(reading);
      if (cause.kind === 'scale' && !(told.airC >= LIKELY_AIR_C[0] && told.airC <= LIKELY_AIR_C[1])) return false;
      const { grossPct, netPct } = bothBases(told);
      return Math.abs(reading.printedPct - (cause.basis === 'net' ? netPct : grossPct)) <= FITS_PCT;
    }).length / readings.length;
  const best = candidates
    .map((candidate) => ({ candidate, share: shareFitting(candidate) }))
    .sort((a, b) => b.share - a.share);
  const [first, second] = best;
  // Two causes that fit alike explain nothing.
  return first.share >= FITS_SHARE && second.share < FITS_SHARE ? first.candidate.cause : undefined;
}

interface Candidate {
  readonly cause: Explanation;
  readonly of: (reading: EfficiencyReading) => EfficiencyReading;
}

const fromFahrenheit = (reading: EfficiencyReading): EfficiencyReading => ({
  ...reading,
  flueC: (reading.flueC - 32) / 1.8,
  airC: (reading.airC - 32) / 1.8,
});
const fromCelsius = (reading: EfficiencyReading): EfficiencyReading => ({
  ...reading,
  flueC: reading.flueC * 1.8 + 32,
  airC: reading.airC * 1.8 + 32,
});
