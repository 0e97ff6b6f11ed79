import type { Pieces } from '../pieces.ts';
import { exp, ln } from '../quantities/elementary.ts';
import { minimizing } from '../statistics/minimize.ts';
import { type FleetProgram, STEP } from './fleet-program.ts';
import { sampleUnits } from './sample-units.ts';
import { criterionOf, sumEquations } from './shared-effects.ts';
import { SHARES, SPREAD_NAMES, type Spread, type SpreadName, type SpreadPrior } from './spread.ts';

/** Where a search may start. */
export interface SearchStart {
  readonly spread: Spread;
  /** What the criterion was like about it, where a search has ended there. */
  readonly curvature?: Curvature | undefined;
}

/** Inverse of the criterion's second derivatives, row-major, with as many units in the sample. */
interface Curvature {
  readonly names: readonly SpreadName[];
  readonly inverse: Float64Array;
  readonly units: number;
}

export interface SpreadEstimate extends SearchStart {
  /** Those that the readings could speak about; the others keep their typical value. */
  readonly estimated: readonly SpreadName[];
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
  /** Where the search starts; the prior's typical values when left out. */
  readonly start?: SearchStart | undefined;
}

/**
 * Hyperparameters at the maximum of the restricted likelihood (see shared-effects.ts) times a broad log-normal prior about
 * trade experience, which decides where a small fleet cannot and is drowned out by a few dozen units. Penalised
 * likelihood keeps a variance from collapsing to zero (Chung et al. 2013, Psychometrika 78, 685-709).
 */
export function* estimatingSpread(program: FleetProgram, options: EstimateOptions): Pieces<SpreadEstimate> {
  const { prior } = options;
  const units = sampleUnits(program.units, options.sample, options.seed);
  const estimated = estimable(program, units).filter((name) => options.free?.includes(name) ?? true);
  const typical = estimated.map((name) => toLine(name, prior.typical[name]));
  const spreadAt = (line: Float64Array): Spread => {
    const spread: Record<SpreadName, number> = { ...prior.typical };
    if (!estimated.includes('settling')) spread.settling = 0;
    estimated.forEach((name, i) => {
      spread[name] = fromLine(name, line[i]);
    });
    return spread;
  };
  const halfCriterion =
    (sample: Int32Array) =>
    (line: Float64Array): number => {
      const spread = spreadAt(line);
      const penalty = line.reduce((sum, value, i) => sum + ((value - typical[i]) / prior.logSd) ** 2, 0);
      return 0.5 * (criterionOf(sumEquations(program, spread, sample), program.shared, spread, prior) + penalty);
    };
  // A fifth of the sample finds the neighbourhood at a fifth of the cost.
  const few = units.length > MANY && !options.start ? units.filter((_, i) => i % 5 === 0) : undefined;
  const rough = few && (yield* minimizing(halfCriterion(few), typical, { ...SEARCH, leastGain: 0.05 }));
  const { start } = options;
  const from = rough?.at ?? (start ? estimated.map((name) => toLine(name, start.spread[name])) : typical);
  const found = yield* minimizing(halfCriterion(units), from, {
    ...SEARCH,
    ...(rough ? { inverseHessian: rough.inverseHessian.map((value) => value / 5) } : {}),
    ...(start?.curvature ? { inverseHessian: curvatureAs(start.curvature, estimated, units.length) } : {}),
  });
  return {
    spread: roundSpread(spreadAt(found.at)),
    estimated,
    unitsUsed: units.length,
    converged: found.converged,
    curvature: { names: estimated, inverse: found.inverseHessian, units: units.length },
  };
}

/** What is known of a curvature, for other hyperparameters and another number of units; a new one stands alone. */
function curvatureAs(known: Curvature, names: readonly SpreadName[], units: number): Float64Array {
  const places = names.map((name) => known.names.indexOf(name));
  const scale = known.units / Math.max(1, units);
  const inverse = new Float64Array(names.length * names.length);
  places.forEach((from, i) => {
    places.forEach((to, j) => {
      if (from >= 0 && to >= 0) inverse[i * names.length + j] = scale * known.inverse[from * known.names.length + to];
      else if (i === j) inverse[i * names.length + j] = NEW_VARIANCE;
    });
  });
  return inverse;
}

/** Of the logarithm of a hyperparameter of which nothing is known yet. */
const NEW_VARIANCE = 0.1;

/**
 * Three significant digits: far finer than any hyperparameter is known, and coarse enough that the last bit of an `exp` or
 * `log`, which differs between JavaScript engines, changes no result.
 */
function roundSpread(spread: Spread): Spread {
  const rounded = Object.entries(spread).map(([name, value]) => [name, Number(value.toPrecision(3))]);
  return Object.fromEntries(rounded) as Record<SpreadName, number>;
}

/** A hyperparameter on the whole line, where it is searched for: logit of a share, logarithm of the others. */
const toLine = (name: SpreadName, value: number): number => (SHARES.has(name) ? ln(value / (1 - value)) : ln(value));
const fromLine = (name: SpreadName, value: number): number => (SHARES.has(name) ? 1 / (1 + exp(-value)) : exp(value));

/** Units from which a fifth is worth a search of its own. */
const MANY = 150;

/** One-sided differences are wrong by a thousandth of the curvature, which moves no hyperparameter by a hundredth of its error. */
const SEARCH = {
  maxSteps: 40,
  difference: 1e-3,
  tolerance: 0.005,
  longestStep: 0.7,
  leastGain: 0.02,
  oneSided: true,
};

/** Which hyperparameters the steps of these units depend on. */
function estimable(program: FleetProgram, units: Int32Array): SpreadName[] {
  const { kind, cell, extra, biasColumn, shared, unitSteps } = program;
  const needed = new Set<SpreadName>(['reading', 'visit', 'wander', 'rate', 'rateWander']);
  const classes = new Set<number>();
  for (const unit of units) {
    for (let step = unitSteps[unit]; step < unitSteps[unit + 1]; step++) {
      const named = biasColumn[step] >= 0;
      for (const name of namesOf(kind[step], cell[step], named, extra[step])) needed.add(name);
      if (kind[step] === STEP.visit && named && shared.zoneMonths > 0) needed.add('zone');
    }
    for (let lane = program.unitLanes[unit]; lane < program.unitLanes[unit + 1]; lane++)
      classes.add(program.columns[program.unitColumns[unit] + program.laneClass[lane]]);
  }
  if (classes.size > 2) needed.add('classRate');
  return shared.classes > 0 ? SPREAD_NAMES.filter((name) => needed.has(name)) : [...needed];
}

/** What a step depends on besides the five that all do. */
function namesOf(kind: number, cell: number, named: boolean, extra: number): readonly SpreadName[] {
  switch (kind) {
    case STEP.visit:
      return [...(cell === 1 ? (['analyzer'] as const) : []), ...(extra > 0 ? (['air'] as const) : [])];
    case STEP.widen:
      return ['unrecorded'];
    case STEP.aim:
      return extra === 1 ? ['left', 'byDisplay'] : ['left', 'byDisplay', 'kept'];
    case STEP.renew:
    case STEP.bend:
      return [];
    default: {
      const own: SpreadName[] = kind === STEP.left && !Number.isNaN(extra) ? ['left', 'leftShare', 'byDisplay'] : [];
      if (cell === 1) own.push('secondReading');
      if (kind === STEP.read && extra === 1) own.push('settling');
      if (named) own.push(cell === 1 ? 'secondAnalyzer' : 'analyzer');
      return own;
    }
  }
}
