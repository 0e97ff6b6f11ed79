import { expect, test } from 'vitest';
import { gaussHermite, gaussLegendre } from '../../../shared/statistics/quadrature.ts';

/** Abramowitz and Stegun, table 25.4 (n = 5) and table 25.10 (n = 5, x times √2 and w over √π); from memory. */
test('five Legendre nodes and weights', () => {
  const { nodes, weights } = gaussLegendre(5);
  expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
  expect(nodes[3]).toBeCloseTo(0.538469310105683, 14);
  expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
  expect(weights[0]).toBeCloseTo(0.236926885056189, 14);
});

test('five Hermite nodes', () => {
  const { nodes } = gaussHermite(5);
  expect(nodes[4]).toBeCloseTo(2.02018287045609 * Math.SQRT2, 12);
  expect(nodes[3]).toBeCloseTo(0.958572464613819 * Math.SQRT2, 12);
});

test.each([5, 9, 10, 30])('%i nodes: the moments of a normal and the integrals of powers', (count) => {
  const { nodes, weights } = gaussHermite(count);
  const moment = (power: number): number => nodes.reduce((sum, z, i) => sum + weights[i] * z ** power, 0);
  expect(moment(0)).toBeCloseTo(1, 12);
  expect(moment(2)).toBeCloseTo(1, 11);
  expect(moment(4)).toBeCloseTo(3, 10);
  const legendre = gaussLegendre(count);
  const integral = legendre.nodes.reduce((sum, x, i) => sum + legendre.weights[i] * x ** 8, 0);
  expect(integral).toBeCloseTo(2 / 9, 12);
});
