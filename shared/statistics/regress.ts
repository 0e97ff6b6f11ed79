import { minus, over, plus, root, type Twofold, times, twofold } from './twofold.ts';

export interface Regression {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residualSd: number;
  /** Share of the sum of squares explained, about the mean, or about zero where `centred` is false. */
  readonly rSquared: number;
  readonly residualSumOfSquares: number;
  readonly freedom: number;
}

/**
 * Least squares of y on the given columns (a column of ones for an intercept), weights equal.
 *
 * Modified Gram-Schmidt in twice double precision, so that the certified digits of badly conditioned data sets are met
 * (Björck, Numerical Methods for Least Squares Problems, 1996, ch. 2). Unknown (NaN) standard errors where no freedom is left.
 * @param columns k columns of n values each
 * @param centred whether R² is taken about the mean (a model with intercept)
 */
export function regress(y: ArrayLike<number>, columns: readonly ArrayLike<number>[], centred = true): Regression {
  const n = y.length;
  const k = columns.length;
  const { q, r } = orthogonalize(columns, n);
  const residual = Array.from(y, twofold);
  const projections = q.map((column, j) => {
    const share = over(inner(column, residual), r[j][j]);
    subtract(residual, column, share);
    return share;
  });
  const coefficients = backSubstitute(r, projections);
  const sumOfSquares = inner(residual, residual).high;
  const freedom = n - k;
  const variance = freedom > 0 ? sumOfSquares / freedom : Number.NaN;
  const standardErrors = inverseDiagonal(r).map((d) => Math.sqrt(d * variance));
  const total = totalSquares(y, centred);
  return {
    coefficients: coefficients.map(({ high }) => high),
    standardErrors,
    residualSd: Math.sqrt(variance),
    rSquared: total > 0 ? 1 - sumOfSquares / total : Number.NaN,
    residualSumOfSquares: sumOfSquares,
    freedom,
  };
}

/** Columns made orthogonal (not normalised): X = Q U with unit diagonal U; r[j][j] holds qⱼ·qⱼ, r[j][k] holds U's row j. */
function orthogonalize(columns: readonly ArrayLike<number>[], n: number): { q: Twofold[][]; r: Twofold[][] } {
  const q = columns.map((column) => Array.from({ length: n }, (_, i) => twofold(column[i])));
  const r = columns.map(() => columns.map(() => twofold(0)));
  for (let j = 0; j < q.length; j++) {
    r[j][j] = inner(q[j], q[j]);
    for (let k = j + 1; k < q.length; k++) {
      r[j][k] = over(inner(q[j], q[k]), r[j][j]);
      subtract(q[k], q[j], r[j][k]);
    }
  }
  return { q, r };
}

function inner(a: readonly Twofold[], b: readonly Twofold[]): Twofold {
  let sum = twofold(0);
  for (let i = 0; i < a.length; i++) sum = plus(sum, times(a[i], b[i]));
  return sum;
}

function subtract(from: Twofold[], column: readonly Twofold[], share: Twofold): void {
  for (let i = 0; i < from.length; i++) from[i] = minus(from[i], times(share, column[i]));
}

/** Solves U b = z with unit diagonal U. */
function backSubstitute(r: readonly (readonly Twofold[])[], z: readonly Twofold[]): Twofold[] {
  const b = z.slice();
  for (let j = b.length - 1; j >= 0; j--)
    for (let k = j + 1; k < b.length; k++) b[j] = minus(b[j], times(r[j][k], b[k]));
  return b;
}

/** Diagonal of (XᵀX)⁻¹ = U⁻¹ D⁻¹ U⁻ᵀ. */
function inverseDiagonal(r: readonly (readonly Twofold[])[]): number[] {
  const k = r.length;
  const diagonal = r.map(() => twofold(0));
  for (let unit = 0; unit < k; unit++) {
    const column = backSubstitute(
      r,
      r.map((_, i) => twofold(i === unit ? 1 : 0)),
    );
    for (let j = 0; j < k; j++) diagonal[j] = plus(diagonal[j], over(times(column[j], column[j]), r[unit][unit]));
  }
  return diagonal.map((d) => root(d).high ** 2);
}

function totalSquares(y: ArrayLike<number>, centred: boolean): number {
  const values = Array.from(y, twofold);
  const sum = values.reduce(plus, twofold(0));
  const square = inner(values, values);
  return centred ? minus(square, over(times(sum, sum), twofold(values.length))).high : square.high;
}
