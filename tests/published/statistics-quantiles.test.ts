import { describe, expect, test } from 'vitest';
import { scaledUpperTail } from '../../shared/statistics/mills-ratio.ts';
import { normalCdf, normalQuantile } from '../../shared/statistics/normal.ts';
import { studentCdf, studentQuantile } from '../../shared/statistics/student.ts';
import r from './reference/statistics-r.json';
import scipy from './reference/statistics-scipy.json';

/** Made with R's qnorm, pnorm, qt and pt (reference/statistics.R; version and date inside the file). */
const table = r as unknown as Record<string, number[]>;

const close = (found: number, expected: number, digits: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(10 ** -digits * Math.max(Math.abs(expected), 1e-300));

describe('distributions against R', () => {
  test('normal quantiles to 12 digits', () => {
    r.p.forEach((p, i) => {
      if (p !== 0.5) close(normalQuantile(p), r.qnorm[i], 12);
    });
    expect(normalQuantile(0.5)).toBe(0);
  });

  test('the normal distribution function to 12 digits, far into the tail', () => {
    r.z.forEach((z, i) => {
      close(normalCdf(z), r.pnorm[i], 12);
    });
  });

  test.each([1, 2, 3, 5, 10, 30, 200])('Student quantiles with %i degrees of freedom to 12 digits', (freedom) => {
    r.p.forEach((p, i) => {
      if (p !== 0.5) close(studentQuantile(p, freedom), table[`qt${freedom}`][i], 12);
    });
  });

  test.each([1, 3, 10, 200])('Student distribution with %i degrees of freedom to 12 digits', (freedom) => {
    r.t.forEach((t, i) => {
      close(studentCdf(t, freedom), table[`pt${freedom}`][i], 12);
    });
  });

  test('the scaled upper tail against SciPy’s erfcx to 14 digits', () => {
    scipy.z.forEach((z, i) => {
      close(scaledUpperTail(z), scipy.scaled_upper_tail[i], 14);
    });
  });
});
