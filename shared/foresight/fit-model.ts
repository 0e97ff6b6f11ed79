import { atOnce, type Pieces } from '../pieces.ts';
import { bendShares } from './bend-shares.ts';
import type { EstimateOptions, SpreadEstimate } from './estimate-spread.ts';
import { type BentEstimate, bendsOf, estimatingWithBends } from './estimate-with-bends.ts';
import { estimatingWithZones } from './estimate-with-zones.ts';
import { askBendPasses, type FleetPasses, fitLanePasses, passesOver, sumPasses } from './fleet-passes.ts';
import type { FleetReadings } from './fleet-readings.ts';
import { type LooseStates, loosenRates } from './heavy-tails.ts';
import { insertBends } from './insert-bends.ts';
import { mixBends, TOLD_CHANCE } from './mix-bends.ts';
import { type SharedEffects, solveShared } from './shared-effects.ts';
import { ProgramWriter, type WrittenProgram } from './write-program.ts';

export interface FleetFit {
  readonly written: WrittenProgram;
  readonly estimate: SpreadEstimate;
  readonly effects: SharedEffects;
  readonly states: LooseStates;
  /** Per lane: the day of the visit since which it drifts as it does now; NaN where it always did. */
  readonly began: Float64Array;
}

/** The whole fit: steps, hyperparameters from a sample of units, shared effects and lanes from all of them. */
export function fitModel(readings: FleetReadings, options: EstimateOptions): FleetFit {
  return atOnce(fittingModel(readings, options)).fit;
}

/** The same, by pieces; with the passes over the fleet, so that more of them may follow. */
export function* fittingModel(
  readings: FleetReadings,
  options: EstimateOptions,
): Pieces<{ fit: FleetFit; passes: FleetPasses }> {
  const all = yield* new ProgramWriter(readings).writing();
  yield;
  const { program, estimate, prior } = yield* estimatingWithZones(all.program, options);
  const written = { ...all, program };
  const bent = yield* estimatingWithBends(written, estimate, { ...options, prior });
  if (bent) return yield* fittingBent(written, bent, options);
  const passes = passesOver(written);
  const { spread } = estimate;
  const effects = solveShared(yield* sumPasses(passes, spread), program.shared, spread, options.prior);
  const states = yield* fitLanePasses(passes, spread, effects);
  yield;
  const loose = loosenRates(states, program, spread, effects, written.series);
  const began = new Float64Array(program.laneClass.length).fill(Number.NaN);
  return { fit: { written, estimate, effects, states: loose, began }, passes };
}

/** In a fleet whose rates change: shared effects and paths with the changes found, lanes as a mixture of changed and not. */
function* fittingBent(
  written: WrittenProgram,
  { estimate, size, effects: sampled }: BentEstimate,
  { prior }: EstimateOptions,
): Pieces<{ fit: FleetFit; passes: FleetPasses }> {
  const { program, series, stepDay } = written;
  const { spread } = estimate;
  const plain = passesOver(written);
  const bends = yield* askBendPasses(plain, spread, sampled, size);
  const shares = bendShares(bends);
  yield;
  const passes = passesOver(insertBends(written, bendsOf(program, { bends, shares }, size)));
  const effects = solveShared(yield* sumPasses(passes, spread), program.shared, spread, prior);
  const states = yield* fitLanePasses(plain, spread, effects);
  yield;
  const loose = loosenRates(states, program, spread, effects, series);
  const began = Float64Array.from(shares.chance, (chance, lane) =>
    chance > TOLD_CHANCE ? (stepDay[bends.stepBefore[lane]] ?? Number.NaN) : Number.NaN,
  );
  return { fit: { written, estimate, effects, states: mixBends(loose, bends, shares.chance, size), began }, passes };
}
