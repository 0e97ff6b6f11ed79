import type { Pieces } from '../pieces.ts';
import { type EstimateOptions, estimatingSpread, type SpreadEstimate } from './estimate-spread.ts';
import type { FleetProgram } from './fleet-program.ts';
import { sampleUnits } from './sample-units.ts';
import { criterionOf, sumEquations } from './shared-effects.ts';
import { SPREAD_NAMES, type Spread, type SpreadPrior } from './spread.ts';
import { withoutZones } from './zone-months.ts';

/** Standard deviations between months of a gas zone, in points of O2, at which the readings are asked whether there is one. */
const ZONE_TRIALS = [0.05, 0.1, 0.2, 0.4] as const;
const TYPICAL_ZONE = 0.1;
/** As good as none. */
const NO_ZONE = 1e-3;
/**
 * Gain in −2 log likelihood from which months differ in truth: by chance one fleet in 140 gains as much (a variance on its
 * border, half a chi-square with one degree of freedom; Self and Liang 1987, J. Am. Stat. Assoc. 82, 605-610).
 */
const ZONE_GAIN = 6;

interface ZonedEstimate {
  readonly program: FleetProgram;
  readonly estimate: SpreadEstimate;
  /** The prior that it was made with. */
  readonly prior: SpreadPrior;
}

/**
 * The hyperparameters, and the steps with the gas zones' months in them only where these are shown to differ: elsewhere an
 * effect a month would cost time and tell nothing.
 */
export function* estimatingWithZones(zoned: FleetProgram, options: EstimateOptions): Pieces<ZonedEstimate> {
  const { prior, sample, seed, start } = options;
  const plain = withoutZones(zoned);
  const names = options.free ?? SPREAD_NAMES;
  const free = names.filter((name) => name !== 'zone');
  const estimate = yield* estimatingSpread(plain, {
    ...options,
    free,
    start: start && { ...start, spread: { ...start.spread, zone: 0 } },
  });
  if (zoned.shared.zoneMonths === 0 || free.length === names.length) return { program: plain, estimate, prior };
  const spreadAt = (zone: number): Spread => ({ ...estimate.spread, zone });
  const equations = sumEquations(zoned, spreadAt(NO_ZONE), sampleUnits(zoned.units, sample, seed));
  // The equations do not know how much months differ; only their prior does.
  const criterion = (zone: number): number =>
    criterionOf({ ...equations, matrix: equations.matrix.slice() }, zoned.shared, spreadAt(zone), prior);
  const none = criterion(NO_ZONE);
  let [gain, zone] = [0, 0];
  for (const trial of ZONE_TRIALS) {
    yield;
    const gained = none - criterion(trial);
    if (gained > gain) [gain, zone] = [gained, trial];
  }
  if (gain < ZONE_GAIN) return { program: plain, estimate, prior };
  const typical = { ...prior.typical, zone: TYPICAL_ZONE };
  const again = { ...options, prior: { ...prior, typical }, start: { ...estimate, spread: spreadAt(zone) } };
  return { program: zoned, estimate: yield* estimatingSpread(zoned, again), prior: again.prior };
}
