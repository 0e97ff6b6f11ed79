import { minimize } from '../statistics/minimize.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import { criterionOf, sumEquations } from './shared-effects.ts';
import { SPREAD_NAMES, type Spread, type SpreadName, type SpreadPrior } from './spread.ts';

export interface SpreadEstimate {
  readonly spread: Spread;
  /** Those that the readings could speak about; the others keep their typical value. */
  readonly estimated: readonly SpreadName[];
  /** Covariance of the logarithms of the estimated ones, row-major. */
  readonly logCovariance: Float64Array;
  readonly unitsUsed: number;
  readonly converged: boolean;
}

export interface EstimateOptions {
  readonly prior: SpreadPrior;
  /** Units of the seeded sample; all where the fleet is not larger. */
  readonly sample: number;
  readonly seed: number;
  /** Those that may be estimated; all when left out. */
  readonly free?: readonly SpreadName[];
}

/**
 * Hyperparameters at the maximum of the restricted likelihood (see shared-effects.ts) times a broad log-normal prior about
 * trade experience, which decides where a small fleet cannot and is drowned out by a few dozen units. Penalised
 * likelihood keeps a variance from collapsing to zero (Chung et al. 2013, Psychometrika 78, 685-709).
 */
export function estimateSpread(program: FleetProgram, options: EstimateOptions): SpreadEstimate {
  const { prior } = options;
  const units = sampleUnits(program.units, options.sample, options.seed);
  const estimated = estimable(program, units).filter((name) => options.free?.includes(name) ?? true);
  const typical = estimated.map((name) => Math.log(prior.typical[name]));
  const spreadAt = (logs: Float64Array): Spread => {
    const spread: Record<SpreadName, number> = { ...prior.typical };
    estimated.forEach((name, i) => {
      spread[name] = Math.exp(logs[i]);
    });
    return spread;
  };
  const half = (logs: Float64Array): number => {
    const spread = spreadAt(logs);
    const penalty = logs.reduce((sum, log, i) => sum + ((log - typical[i]) / prior.logSd) ** 2, 0);
    return 0.5 * (criterionOf(sumEquations(program, spread, units), program.shared, spread, prior) + penalty);
  };
  const found = minimize(half, typical, { maxSteps: 40, difference: 1e-3, tolerance: 0.02, longestStep: 0.7 });
  return {
    spread: spreadAt(found.at),
    estimated,
    logCovariance: found.inverseHessian,
    unitsUsed: units.length,
    converged: found.converged,
  };
}

/** Unit numbers of the sample, ascending: a seeded shuffle's first ones. */
export function sampleUnits(units: number, sample: number, seed: number): Int32Array {
  const all = Int32Array.from({ length: units }, (_, i) => i);
  if (units <= sample) return all;
  let state = (seed ^ 0x9e3779b9) >>> 0;
  for (let i = 0; i < sample; i++) {
    // xorshift32 (Marsaglia 2003, J. Stat. Softw. 8)
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    const j = i + (state % (units - i));
    [all[i], all[j]] = [all[j], all[i]];
  }
  return all.slice(0, sample).sort();
}

/** Which hyperparameters the steps of these units depend on. */
function estimable(program: FleetProgram, units: Int32Array): SpreadName[] {
  const { kind, cell, biasColumn, shared, unitSteps } = program;
  const needed = new Set<SpreadName>(['reading', 'visit', 'wander', 'rate']);
  const classes = new Set<number>();
  for (const unit of units) {
    for (let step = unitSteps[unit]; step < unitSteps[unit + 1]; step++) {
      if (kind[step] === STEP.widen) needed.add('unrecorded');
      else if (kind[step] === STEP.visit && cell[step] === 1) needed.add('analyzer');
      else if (kind[step] === STEP.read || kind[step] === STEP.set) {
        if (cell[step] === 1) needed.add('secondReading');
        if (biasColumn[step] >= 0) needed.add(cell[step] === 1 ? 'secondAnalyzer' : 'analyzer');
      }
    }
    for (let lane = program.unitLanes[unit]; lane < program.unitLanes[unit + 1]; lane++)
      classes.add(program.columns[program.unitColumns[unit] + program.laneClass[lane]]);
  }
  if (classes.size > 2) needed.add('classRate');
  return shared.classes > 0 ? SPREAD_NAMES.filter((name) => needed.has(name)) : [...needed];
}
