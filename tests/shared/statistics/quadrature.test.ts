import { expect, test } from 'vitest';
import { gaussLegendre } from '../../../shared/statistics/quadrature.ts';

/** Abramowitz and Stegun, table 25.4 (n = 5); from memory. */
test('five Legendre nodes and weights', () => {
  const { nodes, weights } = gaussLegendre(5);
  expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
  expect(nodes[3]).toBeCloseTo(0.538469310105683, 14);
  expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
  expect(weights[0]).toBeCloseTo(0.236926885056189, 14);
});

test.each([5, 9, 10, 30])('%i nodes: the integrals of powers', (count) => {
  const { nodes, weights } = gaussLegendre(count);
  const integral = nodes.reduce((sum, x, i) => sum + weights[i] * x ** 8, 0);
  expect(integral).toBeCloseTo(2 / 9, 12);
});
