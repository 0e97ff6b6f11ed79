import { ln } from '../quantities/elementary.ts';
/**
 * Lower factor L of a symmetric positive definite matrix, M = L Lᵀ, in place of the lower triangle (row-major, n × n).
 * @returns the log of the determinant of M, or NaN where M is not positive definite
 */
export function factorCholesky(matrix: Float64Array, n: number): number {
  let logDeterminant = 0;
  for (let i = 0; i < n; i++) {
    const rowI = i * n;
    for (let j = 0; j <= i; j++) {
      const rowJ = j * n;
      let sum = matrix[rowI + j];
      for (let k = 0; k < j; k++) sum -= matrix[rowI + k] * matrix[rowJ + k];
      if (i === j) {
        if (!(sum > 0)) return Number.NaN;
        matrix[rowI + i] = Math.sqrt(sum);
        logDeterminant += ln(sum);
      } else {
        matrix[rowI + j] = sum / matrix[rowJ + j];
      }
    }
  }
  return logDeterminant;
}

/** Solves L x = b in place of b. */
export function solveLower(factor: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= factor[i * n + k] * b[k];
    b[i] = sum / factor[i * n + i];
  }
}

/** Solves Lᵀ x = b in place of b. */
export function solveUpper(factor: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i];
    for (let k = i + 1; k < n; k++) sum -= factor[k * n + i] * b[k];
    b[i] = sum / factor[i * n + i];
  }
}

/** The inverse of M = L Lᵀ, full and row-major. */
export function invertFromFactor(factor: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const column = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    column.fill(0);
    column[j] = 1;
    solveLower(factor, n, column);
    solveUpper(factor, n, column);
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i];
  }
  return inverse;
}
