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

/**
 * Gauss-Hermite rule for the mean of f(Z), Z standard normal: Σ wᵢ f(zᵢ), weights adding to 1. Roots of the
 * probabilists' Hermite polynomial by Newton's method with deflation (Abramowitz and Stegun 25.4.46, scaled).
 */
export function gaussHermite(count: number): Quadrature {
  const nodes: number[] = [];
  for (let i = 0; i < count; i++) {
    let z = i === 0 ? 2 * Math.sqrt(count) : nodes[i - 1] - 1e-3;
    for (let turn = 0; turn < 500; turn++) {
      const { value, derivative } = hermite(count, z);
      const pull = nodes.reduce((sum, root) => sum + 1 / (z - root), 0);
      const step = value / (derivative - value * pull);
      z -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes.push(z);
  }
  nodes.sort((a, b) => a - b);
  const weights = nodes.map((z) => 1 / (count * hermite(count - 1, z).value ** 2));
  return { nodes: Float64Array.from(nodes), weights: Float64Array.from(weights) };
}

/** Orthonormal Hermite polynomial of a degree at z, and its derivative. */
function hermite(degree: number, z: number): { value: number; derivative: number } {
  let before = 0;
  let value = 1;
  for (let k = 1; k <= degree; k++) [before, value] = [value, (z * value - Math.sqrt(k - 1) * before) / Math.sqrt(k)];
  return { value, derivative: Math.sqrt(degree) * before };
}
