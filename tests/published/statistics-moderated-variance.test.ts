import { describe, expect, test } from 'vitest';
import { commonVariance, moderatedVariance } from '../../shared/statistics/moderated-variance.ts';
import { varianceRatioTail } from '../../shared/statistics/variance-ratio.ts';
import r from './reference/moderated-variance-r.json';

const near = (found: number, expected: number, relative: number): void =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

/** Made with limma's squeezeVar and R's pf (reference/moderated-variance.R; versions and date inside the file): seen. */
describe('variances drawn toward what is common, against limma', () => {
  test('the common variance, its degrees of freedom, and each variance moderated', () => {
    const common = commonVariance(r.variance, r.freedom);
    near(common.freedom, r.prior_freedom[0], 1e-8);
    near(common.variance, r.prior_variance[0], 1e-9);
    r.variance.forEach((variance, i) => {
      near(moderatedVariance(variance, r.freedom[i], common), r.posterior[i], 1e-9);
    });
  });

  test('variances that differ by less than chance are one variance', () => {
    const common = commonVariance(
      r.even,
      r.even.map(() => 8),
    );
    expect(common.freedom).toBe(Number.POSITIVE_INFINITY);
    near(common.variance, r.even_prior_variance[0], 1e-12);
    expect(moderatedVariance(1, 8, common)).toBe(common.variance);
  });

  test('two variances say nothing about a third', () => {
    expect(commonVariance([1, 2], [3, 3]).freedom).toBe(0);
    expect(moderatedVariance(5, 3, commonVariance([1, 2], [3, 3]))).toBe(5);
  });
});

describe('the tail of F, against R', () => {
  test('finite and infinite degrees of freedom', () => {
    r.f.forEach((f, i) => {
      near(varianceRatioTail(f, 3, 12), r.pf_3_12[i], 1e-10);
      near(varianceRatioTail(f, 4, 7.5), r['pf_4_7.5'][i], 1e-10);
      near(varianceRatioTail(f, 3, Number.POSITIVE_INFINITY), r.pf_3_inf[i], f < 10 ? 1e-3 : 0.005);
    });
    expect(varianceRatioTail(0, 3, 12)).toBe(1);
    expect(varianceRatioTail(Number.NaN, 3, 12)).toBeNaN();
  });
});
