import { ln } from '../quantities/elementary.ts';
import { factorCholesky, invertFromFactor, solveLower } from './cholesky.ts';
import { minimize } from './minimize.ts';

/** y = X b + Z u + e with u ~ N(0, σ² Λ Λᵀ) drawn anew for each group, e ~ N(0, σ²). */
export interface MixedModelData {
  readonly y: ArrayLike<number>;
  /** Columns of the fixed effects, n values each. */
  readonly fixed: readonly ArrayLike<number>[];
  /** Columns of the random effects, n values each (a column of ones and the time, say). */
  readonly random: readonly ArrayLike<number>[];
  /** Group number of each observation, from 0. */
  readonly group: ArrayLike<number>;
}

export interface MixedModel {
  /** −2 log of the restricted likelihood (or of the likelihood) at the estimates. */
  readonly criterion: number;
  readonly fixed: readonly number[];
  readonly fixedSe: readonly number[];
  /** Standard deviations of the random effects, and their correlation matrix row by row. */
  readonly randomSd: readonly number[];
  readonly randomCorrelation: readonly number[];
  readonly residualSd: number;
  /** Best linear unbiased predictions and their standard errors given the fixed effects, by group. */
  readonly predicted: readonly (readonly number[])[];
  readonly predictedSe: readonly (readonly number[])[];
}

/** Sums over one group's observations: ZᵀZ, ZᵀX, Zᵀy. */
interface GroupSums {
  readonly zz: Float64Array;
  readonly zx: Float64Array;
  readonly zy: Float64Array;
}

interface Sums {
  readonly n: number;
  readonly p: number;
  readonly q: number;
  readonly groups: readonly GroupSums[];
  readonly xx: Float64Array;
  readonly xy: Float64Array;
  readonly yy: number;
}

/**
 * Linear mixed model with one grouping, by restricted maximum likelihood or maximum likelihood: the criterion is profiled
 * over the fixed effects and σ² and minimised over the entries of the relative factor Λ (Bates, Mächler, Bolker and Walker
 * 2015, J. Stat. Softw. 67(1), eqs. 33-41).
 */
export function fitMixedModel(data: MixedModelData, method: 'REML' | 'ML'): MixedModel {
  const sums = sumUp(data);
  const start: number[] = [];
  for (let i = 0; i < sums.q; i++) for (let j = 0; j <= i; j++) start.push(i === j ? 1 : 0);
  const criterionAt = (theta: Float64Array): number => solve(sums, theta, method).criterion;
  const coarse = minimize(criterionAt, start, { maxSteps: 200, difference: 1e-5, tolerance: 1e-5, longestStep: 0.5 });
  const fine = minimize(criterionAt, coarse.at, { maxSteps: 50, difference: 1e-4, tolerance: 1e-8, longestStep: 0.1 });
  return describe(sums, solve(sums, fine.at, method), fine.at);
}

function sumUp({ y, fixed, random, group }: MixedModelData): Sums {
  const [n, p, q] = [y.length, fixed.length, random.length];
  const groups: GroupSums[] = [];
  const xx = new Float64Array(p * p);
  const xy = new Float64Array(p);
  let yy = 0;
  for (let row = 0; row < n; row++) {
    while (groups.length <= group[row])
      groups.push({ zz: new Float64Array(q * q), zx: new Float64Array(q * p), zy: new Float64Array(q) });
    const { zz, zx, zy } = groups[group[row]];
    for (let i = 0; i < q; i++) {
      for (let j = 0; j < q; j++) zz[i * q + j] += random[i][row] * random[j][row];
      for (let j = 0; j < p; j++) zx[i * p + j] += random[i][row] * fixed[j][row];
      zy[i] += random[i][row] * y[row];
    }
    for (let i = 0; i < p; i++) {
      for (let j = 0; j < p; j++) xx[i * p + j] += fixed[i][row] * fixed[j][row];
      xy[i] += fixed[i][row] * y[row];
    }
    yy += y[row] * y[row];
  }
  return { n, p, q, groups, xx, xy, yy };
}

interface Solution {
  readonly criterion: number;
  readonly beta: Float64Array;
  readonly betaCovariance: Float64Array;
  readonly variance: number;
  readonly factors: readonly Float64Array[];
}

function solve({ n, p, q, groups, xx, xy, yy }: Sums, theta: Float64Array, method: 'REML' | 'ML'): Solution {
  const lambda = lowerFactor(theta, q);
  const matrix = xx.slice();
  const right = xy.slice();
  let squares = yy;
  let logDeterminant = 0;
  const factors = groups.map((sums) => {
    const factor = innerMatrix(sums.zz, lambda, q);
    logDeterminant += factorCholesky(factor, q);
    const columns = Array.from({ length: p + 1 }, (_, column) => {
      const rotated = new Float64Array(q);
      for (let i = 0; i < q; i++)
        for (let k = i; k < q; k++)
          rotated[i] += lambda[k * q + i] * (column < p ? sums.zx[k * p + column] : sums.zy[k]);
      solveLower(factor, q, rotated);
      return rotated;
    });
    for (let i = 0; i < q; i++) {
      for (let a = 0; a < p; a++) {
        for (let b = 0; b < p; b++) matrix[a * p + b] -= columns[a][i] * columns[b][i];
        right[a] -= columns[a][i] * columns[p][i];
      }
      squares -= columns[p][i] ** 2;
    }
    return factor;
  });
  const logFixed = factorCholesky(matrix, p);
  const inverse = invertFromFactor(matrix, p);
  const beta = new Float64Array(p);
  for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) beta[i] += inverse[i * p + j] * right[j];
  const rest = squares - beta.reduce((sum, b, i) => sum + b * right[i], 0);
  const freedom = method === 'REML' ? n - p : n;
  const variance = rest / freedom;
  const criterion = logDeterminant + (method === 'REML' ? logFixed : 0) + freedom * (1 + ln(2 * Math.PI * variance));
  return { criterion, beta, betaCovariance: inverse.map((value) => value * variance), variance, factors };
}

function lowerFactor(theta: Float64Array, q: number): Float64Array {
  const lambda = new Float64Array(q * q);
  let at = 0;
  for (let i = 0; i < q; i++) for (let j = 0; j <= i; j++) lambda[i * q + j] = theta[at++];
  return lambda;
}

/** Λᵀ ZᵀZ Λ + I. */
function innerMatrix(zz: Float64Array, lambda: Float64Array, q: number): Float64Array {
  const matrix = new Float64Array(q * q);
  for (let i = 0; i < q; i++)
    for (let j = 0; j < q; j++) {
      let sum = i === j ? 1 : 0;
      for (let k = i; k < q; k++)
        for (let l = j; l < q; l++) sum += lambda[k * q + i] * zz[k * q + l] * lambda[l * q + j];
      matrix[i * q + j] = sum;
    }
  return matrix;
}

function describe(sums: Sums, solution: Solution, theta: Float64Array): MixedModel {
  const { p, q, groups } = sums;
  const { beta, betaCovariance, variance, factors } = solution;
  const lambda = lowerFactor(theta, q);
  const covariance = new Float64Array(q * q);
  for (let i = 0; i < q; i++)
    for (let j = 0; j < q; j++)
      for (let k = 0; k < q; k++) covariance[i * q + j] += variance * lambda[i * q + k] * lambda[j * q + k];
  const sd = Array.from({ length: q }, (_, i) => Math.sqrt(covariance[i * q + i]));
  const groupsTold = groups.map((group, g) => predict(group, factors[g], lambda, beta, variance, p, q));
  return {
    criterion: solution.criterion,
    fixed: [...beta],
    fixedSe: Array.from({ length: p }, (_, i) => Math.sqrt(betaCovariance[i * p + i])),
    randomSd: sd,
    randomCorrelation: Array.from(covariance, (value, place) => value / (sd[Math.floor(place / q)] * sd[place % q])),
    residualSd: Math.sqrt(variance),
    predicted: groupsTold.map(({ values }) => values),
    predictedSe: groupsTold.map(({ errors }) => errors),
  };
}

/** u = Λ (ΛᵀZᵀZΛ + I)⁻¹ Λᵀ Zᵀ(y − Xb). */
function predict(
  { zx, zy }: GroupSums,
  factor: Float64Array,
  lambda: Float64Array,
  beta: Float64Array,
  variance: number,
  p: number,
  q: number,
): { values: number[]; errors: number[] } {
  const inner = invertFromFactor(factor, q);
  const residual = Array.from({ length: q }, (_, i) => zy[i] - beta.reduce((sum, b, j) => sum + zx[i * p + j] * b, 0));
  const full = new Float64Array(q * q);
  for (let i = 0; i < q; i++)
    for (let j = 0; j < q; j++)
      for (let k = 0; k <= i; k++)
        for (let l = 0; l <= j; l++) full[i * q + j] += lambda[i * q + k] * inner[k * q + l] * lambda[j * q + l];
  return {
    values: residual.map((_, i) => residual.reduce((sum, r, j) => sum + full[i * q + j] * r, 0)),
    errors: residual.map((_, i) => Math.sqrt(variance * full[i * q + i])),
  };
}
