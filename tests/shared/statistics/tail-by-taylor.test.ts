import libraryExp from '@stdlib/math-base-special-exp';
import { expect, test } from 'vitest';
import { scaledUpperTail } from '../../../shared/statistics/mills-ratio.ts';
import { decayByTaylor, LEAST_TABLED, tailByTaylor } from '../../../shared/statistics/tail-by-taylor.ts';

/** Cody's rational functions, and Φ(−x) = 1 − Φ(x) below zero. */
const exact = (x: number): number => (x >= 0 ? scaledUpperTail(x) : libraryExp(0.5 * x * x) - scaledUpperTail(-x));

test('the tail by Taylor: within what its remainder allows, between the places and at their borders', () => {
  for (let i = 0; i <= 200_000; i++) {
    const x = LEAST_TABLED + (i * 16) / 200_000;
    // 1e-10 at −3 falls like the eighth derivative; 4e-16 of the value is rounding, a few times over.
    const allowed = (x < 0 ? 1e-10 : 2e-15) + 2e-15 * exact(x);
    expect(Math.abs(tailByTaylor(x) - exact(x)), `${x}`).toBeLessThan(allowed);
  }
});

test('the decay by Taylor: within a few roundings', () => {
  for (let i = 0; i < 100_000; i++) {
    const x = (i * 40) / 100_000;
    expect(Math.abs(decayByTaylor(x) / libraryExp(-x) - 1), `${x}`).toBeLessThan(1e-15);
  }
  expect([decayByTaylor(0), decayByTaylor(40), decayByTaylor(1 / 0)]).toEqual([1, 0, 0]);
});
