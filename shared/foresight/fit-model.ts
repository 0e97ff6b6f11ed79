import { type EstimateOptions, estimateSpread, type SpreadEstimate } from './estimate-spread.ts';
import { fitLanes } from './fit-fleet.ts';
import type { FleetReadings } from './fleet-readings.ts';
import { type LooseStates, loosenRates } from './heavy-tails.ts';
import { type SharedEffects, solveShared, sumEquations } from './shared-effects.ts';
import { ProgramWriter, type WrittenProgram } from './write-program.ts';

export interface FleetFit {
  readonly written: WrittenProgram;
  readonly estimate: SpreadEstimate;
  readonly effects: SharedEffects;
  readonly states: LooseStates;
}

/** The whole fit: steps, hyperparameters from a sample of units, shared effects and lanes from all of them. */
export function fitModel(readings: FleetReadings, options: EstimateOptions): FleetFit {
  const written = new ProgramWriter(readings).write();
  const estimate = estimateSpread(written.program, options);
  const { program } = written;
  const effects = solveShared(sumEquations(program, estimate.spread), program.shared, estimate.spread, options.prior);
  const states = fitLanes(program, estimate.spread, effects);
  return { written, estimate, effects, states: loosenRates(states, program, estimate.spread, effects, written.series) };
}
