import { describe, expect, test } from 'vitest';
import { enoughNodes } from '../../../shared/statistics/enough-nodes.ts';
import { normalCdf } from '../../../shared/statistics/normal.ts';
import type { Quadrature } from '../../../shared/statistics/quadrature.ts';

const sum = ({ nodes, weights }: Quadrature, f: (u: number) => number): number =>
  nodes.reduce((total, u, i) => total + weights[i] * f(u), 0);

describe('as many nodes as the error asks for', () => {
  const cases = [0.3, 1, 2.5, 4, 6, 8].flatMap((steepness) =>
    [5, 9.2, 14, 19, 24].map((digits) => [steepness, digits]),
  );

  test.each(cases)('a normal density of steepness %s, to exp(−%s)', (steepness, digits) => {
    const rule = enoughNodes(steepness, digits);
    if (!rule) return expect(steepness).toBeGreaterThan(6);
    for (const center of [0, 0.4, 1]) {
      // ∫ exp(−λ²(u − c)²/2) du = (√2π/λ) (Φ(λ(1 − c)) − Φ(λ(−1 − c))); at most 1 for real u.
      const exact =
        (Math.sqrt(2 * Math.PI) / steepness) *
        (normalCdf(steepness * (1 - center)) - normalCdf(steepness * (-1 - center)));
      const found = sum(rule, (u) => Math.exp(-0.5 * (steepness * (u - center)) ** 2));
      expect(Math.abs(found - exact)).toBeLessThan(Math.exp(-digits) + 1e-14);
    }
  });

  test.each(cases)('a normal distribution function of steepness %s, to exp(−%s)', (steepness, digits) => {
    const rule = enoughNodes(steepness, digits);
    if (!rule) return expect(steepness).toBeGreaterThan(6);
    for (const center of [0, 0.4, 1]) {
      // ∫ Φ(x) dx = xΦ(x) + φ(x).
      const integral = (x: number): number => x * normalCdf(x) + Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
      const exact = (integral(steepness * (1 - center)) - integral(steepness * (-1 - center))) / steepness;
      const found = sum(rule, (u) => normalCdf(steepness * (u - center)));
      expect(Math.abs(found - exact)).toBeLessThan(2 * Math.exp(-digits) + 1e-14);
    }
  });

  test('few where little is asked, none where too many were needed', () => {
    expect(enoughNodes(1, 3)?.nodes.length).toBeLessThan(6);
    expect(enoughNodes(100, 20)).toBeUndefined();
    // So small an interval is never steep, but no rule of so few nodes gains so much.
    expect(enoughNodes(1e-9, 1000)).toBeUndefined();
    expect(enoughNodes(1e-9, 115)).toBeUndefined();
  });
});
