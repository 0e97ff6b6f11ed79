import { ln } from '../quantities/elementary.ts';
import { factorCholesky, invertFromFactor, solveLower, solveUpper } from '../statistics/cholesky.ts';
import { columnsOf, type FleetProgram, type SharedColumns } from './fleet-program.ts';
import type { Spread, SpreadPrior } from './spread.ts';
import { UnitFilter } from './unit-filter.ts';

/** Normal equations of what the fleet shares, summed over units. */
export interface SharedEquations {
  readonly columns: number;
  /** XᵀV⁻¹X, full and row-major. */
  readonly matrix: Float64Array;
  /** XᵀV⁻¹y. */
  readonly right: Float64Array;
  readonly squares: number;
  readonly logDeterminant: number;
  readonly counted: number;
}

/** Best linear unbiased predictions of the shared effects, their covariance, and −2 log likelihood. */
export interface SharedEffects {
  readonly values: Float64Array;
  /** Row-major. */
  readonly covariance: Float64Array;
  readonly criterion: number;
}

/** @param units those to sum over; all units of the program when left out */
export function sumEquations(program: FleetProgram, spread: Spread, units?: ArrayLike<number>): SharedEquations {
  const columns = columnsOf(program.shared);
  const matrix = new Float64Array(columns * columns);
  const right = new Float64Array(columns);
  const filter = new UnitFilter();
  let squares = 0;
  let logDeterminant = 0;
  let counted = 0;
  const count = units ? units.length : program.units;
  for (let i = 0; i < count; i++) {
    const unit = units ? units[i] : i;
    filter.run(program, unit, spread);
    squares += filter.products[0];
    logDeterminant += filter.logDeterminant;
    counted += filter.counted;
    scatter(filter, program, unit, matrix, right, columns);
  }
  return { columns, matrix, right, squares, logDeterminant, counted };
}

function scatter(
  filter: UnitFilter,
  program: FleetProgram,
  unit: number,
  matrix: Float64Array,
  right: Float64Array,
  columns: number,
): void {
  const { products, stride, active } = filter;
  const first = program.unitColumns[unit];
  for (let j = 1; j < active; j++) {
    const row = program.columns[first + j - 1];
    right[row] += products[j * stride];
    for (let k = 1; k <= j; k++) {
      const column = program.columns[first + k - 1];
      matrix[row * columns + column] += products[j * stride + k];
      if (k !== j) matrix[column * columns + row] += products[j * stride + k];
    }
  }
}

/**
 * Solves for the shared effects. All have proper priors: biases N(0, analyzer²), class rates about a fleet rate, offsets;
 * with the wide ones for the fleet's rate and offsets this is the restricted likelihood (Harville 1974, Biometrika 61;
 * Patterson and Thompson 1971, Biometrika 58) up to a constant.
 */
export function solveShared(
  equations: SharedEquations,
  shared: SharedColumns,
  spread: Spread,
  prior: SpreadPrior,
): SharedEffects {
  const { columns: n, right } = equations;
  const matrix = equations.matrix.slice();
  const logPrior = addPrior(matrix, shared, spread, prior);
  const logPosterior = factorCholesky(matrix, n);
  const half = right.slice();
  solveLower(matrix, n, half);
  const explained = half.reduce((sum, value) => sum + value * value, 0);
  solveUpper(matrix, n, half);
  const criterion =
    equations.logDeterminant +
    equations.counted * ln(2 * Math.PI) +
    logPosterior -
    logPrior +
    equations.squares -
    explained;
  return { values: half, covariance: invertFromFactor(matrix, n), criterion };
}

/** The criterion alone, without the inverse. */
export function criterionOf(
  equations: SharedEquations,
  shared: SharedColumns,
  spread: Spread,
  prior: SpreadPrior,
): number {
  const { columns: n, right } = equations;
  const matrix = equations.matrix;
  const logPrior = addPrior(matrix, shared, spread, prior);
  const logPosterior = factorCholesky(matrix, n);
  const half = right.slice();
  solveLower(matrix, n, half);
  const explained = half.reduce((sum, value) => sum + value * value, 0);
  return (
    equations.logDeterminant +
    equations.counted * ln(2 * Math.PI) +
    logPosterior -
    logPrior +
    equations.squares -
    explained
  );
}

/**
 * What an analyzer came to read says nothing of how far analyzers lie apart, nor of what they read on average: a normal prior
 * would share its step out among all of them and the burners.
 */
const ANY_BIAS_O2 = 2;

/** Adds the prior's precision to the matrix; returns its log determinant. */
function addPrior(matrix: Float64Array, shared: SharedColumns, spread: Spread, prior: SpreadPrior): number {
  const n = columnsOf(shared);
  let at = 0;
  let log = 0;
  const diagonal = (count: number, sd: number): void => {
    for (let i = 0; i < count; i++, at++) matrix[at * n + at] += 1 / (sd * sd);
    if (count > 0) log -= 2 * count * ln(sd);
  };
  const later = shared.laterAnalyzers;
  diagonal(shared.analyzers - later, spread.analyzer);
  diagonal(later, ANY_BIAS_O2);
  diagonal(shared.secondAnalyzers - later, spread.secondAnalyzer);
  diagonal(later, ANY_BIAS_O2);
  // Class rates: covariance a·I + b·11ᵀ, inverse (I − 11ᵀ b/(a + m b))/a.
  const m = shared.classes;
  const a = spread.classRate * spread.classRate;
  const b = prior.fleetRate * prior.fleetRate;
  for (let i = 0; i < m; i++)
    for (let j = 0; j < m; j++) matrix[(at + i) * n + at + j] += ((i === j ? 1 : 0) - b / (a + m * b)) / a;
  if (m > 0) log -= (m - 1) * ln(a) + ln(a + m * b);
  at += m;
  diagonal(shared.offsets, prior.offset);
  for (let i = 0; i < shared.aims; i++) diagonal(1, prior.aims[i % prior.aims.length]);
  diagonal(shared.zoneMonths, spread.zone);
  return log;
}
