import type { Pieces } from '../pieces.ts';
import { type BendShares, bendShares } from './bend-shares.ts';
import { askBends, type LaneBends } from './bent-lanes.ts';
import { type EstimateOptions, estimatingSpread, type SpreadEstimate } from './estimate-spread.ts';
import type { FleetProgram } from './fleet-program.ts';
import { type Bend, insertBends } from './insert-bends.ts';
import { TOLD_CHANCE } from './mix-bends.ts';
import { sampleUnits } from './sample-units.ts';
import { type SharedEffects, solveShared, sumEquations } from './shared-effects.ts';
import type { WrittenProgram } from './write-program.ts';

/**
 * Gain in log likelihood from which rates are taken to change in this fleet. By the chi-square of two degrees of freedom (how
 * many, and by how much) one fleet of twenty without any would reach it; since both stand on their border it is far fewer:
 * none of 600 simulated.
 */
const BEND_GAIN = 3;
/** Times that hyperparameters and bent lanes are found in turn: a fleet's bends widen its rates before they are known. */
const TURNS = 2;

export interface BentEstimate {
  readonly estimate: SpreadEstimate;
  /** Standard deviation of a change of rate, per year. */
  readonly size: number;
  /** Shared effects of the sample with its bends taken out. */
  readonly effects: SharedEffects;
}

/**
 * Some units stand still for years and begin to drift: a linkage that wears from a day on. Whether rates of this fleet change
 * is asked of the readings as with the months of the gas: each lane may have one change of its rate by N(0, size²), lanes
 * that have one are a share of the fleet (both by maximum likelihood), and where that gains enough, the hyperparameters are
 * estimated anew with the changes taken out of them. Undefined where the readings do not ask for it.
 */
export function* estimatingWithBends(
  written: Pick<WrittenProgram, 'program' | 'stepDay'>,
  known: SpreadEstimate,
  options: EstimateOptions,
): Pieces<BentEstimate | undefined> {
  const { prior, sample, seed } = options;
  const units = sampleUnits(written.program.units, sample, seed);
  let estimate = known;
  let program = written.program;
  for (let turn = 0; ; turn++) {
    const { spread } = estimate;
    const effects = solveShared(sumEquations(program, spread, units), program.shared, spread, prior);
    yield;
    let most: Asked | undefined;
    for (const size of prior.bends) {
      const bends = askBends(written.program, spread, effects, size, units);
      yield;
      const shares = bendShares(bends);
      if (!most || shares.gain > most.shares.gain) most = { size, bends, shares };
      // Where the first size finds next to nothing, none finds enough.
      if (most.shares.gain < BEND_GAIN / 2) break;
    }
    if (!most || most.shares.gain < BEND_GAIN) return undefined;
    if (turn === TURNS) return { estimate, size: most.size, effects };
    program = insertBends(written, bendsOf(written.program, most, most.size)).program;
    estimate = yield* estimatingSpread(program, { ...options, start: estimate });
  }
}

interface Asked {
  readonly size: number;
  readonly bends: LaneBends;
  readonly shares: BendShares;
}

/** Where the rates of lanes that changed most probably did. */
export function bendsOf(
  { units, unitLanes }: FleetProgram,
  { bends, shares }: Pick<Asked, 'bends' | 'shares'>,
  size: number,
): Bend[] {
  const found: Bend[] = [];
  for (let unit = 0; unit < units; unit++)
    for (let lane = unitLanes[unit]; lane < unitLanes[unit + 1]; lane++)
      if (shares.chance[lane] > TOLD_CHANCE && bends.step[lane] >= 0)
        found.push({ step: bends.step[lane], lane: lane - unitLanes[unit], size });
  return found;
}
