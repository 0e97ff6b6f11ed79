import { atOnce, type Pieces } from '../pieces.ts';
import type { EstimateOptions, SpreadEstimate } from './estimate-spread.ts';
import { estimatingWithZones } from './estimate-with-zones.ts';
import { type FleetPasses, fitLanePasses, passesOver, sumPasses } from './fleet-passes.ts';
import type { FleetReadings } from './fleet-readings.ts';
import { type LooseStates, loosenRates } from './heavy-tails.ts';
import { type SharedEffects, solveShared } from './shared-effects.ts';
import { ProgramWriter, type WrittenProgram } from './write-program.ts';

export interface FleetFit {
  readonly written: WrittenProgram;
  readonly estimate: SpreadEstimate;
  readonly effects: SharedEffects;
  readonly states: LooseStates;
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
  const { program, estimate } = yield* estimatingWithZones(all.program, options);
  const written = { ...all, program };
  const passes = passesOver(written);
  const { spread } = estimate;
  const effects = solveShared(yield* sumPasses(passes, spread), program.shared, spread, options.prior);
  const states = yield* fitLanePasses(passes, spread, effects);
  yield;
  const loose = loosenRates(states, program, spread, effects, written.series);
  return { fit: { written, estimate, effects, states: loose }, passes };
}
