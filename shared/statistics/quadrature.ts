import { cos } from '../quantities/elementary.ts';
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Gauss-Legendre rule on [−1, 1]: roots of the Legendre polynomial by Newton's method (Abramowitz and Stegun 25.4.29). */
export function gaussLegendre(count: number): Quadrature {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let turn = 0; turn < 100; turn++) {
      const { value, derivative } = legendre(count, x);
      slope = derivative;
      const step = value / derivative;
      x -= step;
      if (Math.abs(step) < 1e-16) break;
    }
    nodes[count - 1 - i] = x;
    weights[count - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

function legendre(degree: number, x: number): { value: number; derivative: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return { value, derivative: (degree * (x * value - before)) / (x * x - 1) };
}
