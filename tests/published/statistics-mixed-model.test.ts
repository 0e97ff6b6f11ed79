import { describe, expect, test } from 'vitest';
import { fitMixedModel, type MixedModelData } from '../../shared/statistics/mixed-model.ts';
import { SLEEP_REACTION } from './reference/sleep-reaction.ts';
import r from './reference/statistics-r.json';

const table = r as unknown as Record<string, number[]>;
const ones = (n: number): number[] => Array.from({ length: n }, () => 1);

function sleep(): MixedModelData {
  const y = SLEEP_REACTION.flat();
  const day = y.map((_, i) => i % 10);
  return { y, fixed: [ones(180), day], random: [ones(180), day], group: y.map((_, i) => Math.floor(i / 10)) };
}

function orthodont(): MixedModelData {
  const { orthodont_distance: y, orthodont_age: age } = r;
  const x = [ones(y.length), age];
  return { y, fixed: x, random: x, group: r.orthodont_subject.map((subject) => subject - 1) };
}

describe('linear mixed models against lme4 (reference/statistics.R)', () => {
  test.each([
    ['sleep', sleep(), 'REML'],
    ['sleep', sleep(), 'ML'],
    ['orthodont', orthodont(), 'REML'],
    ['orthodont', orthodont(), 'ML'],
  ] as const)('%s, %s', (name, data, method) => {
    const fit = fitMixedModel(data, method);
    const key = `${name}_${method.toLowerCase()}`;
    expect(fit.criterion).toBeCloseTo(table[`${key}_criterion`][0], 6);
    fit.fixed.forEach((value, i) => {
      expect(value).toBeCloseTo(table[`${key}_fixed`][i], 6);
    });
    fit.fixedSe.forEach((value, i) => {
      expect(Math.abs(value / table[`${key}_se`][i] - 1)).toBeLessThan(1e-5);
    });
    const [intercept, slope, correlation, residual] = table[`${key}_sd`];
    // The criterion is flat at its minimum: 1e-8 in it is 1e-4 of a standard deviation, relative.
    expect(Math.abs(fit.randomSd[0] / intercept - 1)).toBeLessThan(2e-5);
    expect(Math.abs(fit.randomSd[1] / slope - 1)).toBeLessThan(2e-5);
    expect(fit.randomCorrelation[1]).toBeCloseTo(correlation, 4);
    expect(Math.abs(fit.residualSd / residual - 1)).toBeLessThan(1e-5);
    fit.predicted.flat().forEach((value, i) => {
      expect(value).toBeCloseTo(table[`${key}_random`][i], 3);
    });
  });

  test('the published figures of sleepstudy (lme4’s documentation, seen): all printed digits', () => {
    const reml = fitMixedModel(sleep(), 'REML');
    expect(reml.criterion.toFixed(6)).toBe('1743.628272');
    expect(reml.fixed.map((value) => value.toFixed(6))).toEqual(['251.405105', '10.467286']);
    expect(reml.fixedSe[0].toFixed(3)).toBe('6.825');
    expect(reml.randomSd.map((value) => value.toFixed(3))).toEqual(['24.740', '5.922']);
    expect(reml.residualSd.toFixed(3)).toBe('25.592');
    const ml = fitMixedModel(sleep(), 'ML');
    expect(ml.criterion.toFixed(6)).toBe('1751.939344');
  });
});
