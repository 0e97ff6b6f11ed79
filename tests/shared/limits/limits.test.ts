import { describe, expect, test } from 'vitest';
import { CO_LIMITS } from '../../../shared/limits/co-limits.ts';
import { cutByExpectedFalse } from '../../../shared/limits/expected-false.ts';
import { guardedVerdict } from '../../../shared/limits/guarded-verdict.ts';
import { probabilityOutside } from '../../../shared/limits/probability-outside.ts';
import { runningVerdict, staticVerdict, supplyMovesOxygen } from '../../../shared/limits/supply-verdicts.ts';
import { verdictOf } from '../../../shared/limits/verdict.ts';
import { SAFETY_SOURCES } from '../../../shared/sources/safety.ts';

const NONE = Number.NaN;

test('within, outside or unknown; the limit itself is within', () => {
  expect(verdictOf(8.4, 8.4, 9.2)).toBe('within');
  expect(verdictOf(8.39, 8.4, 9.2)).toBe('outside');
  expect(verdictOf(5, NONE, 4)).toBe('outside');
  expect(verdictOf(5, 4, NONE)).toBe('within');
  expect(verdictOf(NONE, 4, 6)).toBe('unknown');
  expect(verdictOf(5, NONE, NONE)).toBe('unknown');
});

describe('guard-banded statement (ILAC-G8:09/2019: pass, conditional pass, conditional fail, fail)', () => {
  test.each([
    [5, 'within'],
    [5.6, 'within_by_less'],
    [6.4, 'outside_by_less'],
    [6.6, 'outside'],
    [4.4, 'within_by_less'],
    [3.4, 'outside'],
  ])('%f in 4..6 with an uncertainty of 0.3, guard 0.492: %s', (value, verdict) => {
    expect(guardedVerdict(value, 0.3, 4, 6)).toBe(verdict);
  });

  test('nothing is clear where the uncertainty is unknown', () => {
    expect(guardedVerdict(5, NONE, 4, 6)).toBe('within_by_less');
    expect(guardedVerdict(9, NONE, 4, 6)).toBe('outside_by_less');
    expect(guardedVerdict(NONE, 0.3, 4, 6)).toBe('unknown');
  });

  test('one-sided', () => {
    expect(guardedVerdict(300, 10, NONE, 400)).toBe('within');
    expect(guardedVerdict(430, 10, NONE, 400)).toBe('outside');
  });
});

test('chance of being inside: 50 % at the limit, 84 % by one and 95 % by 1.64 uncertainties (normal table)', () => {
  const inside = (by: number): number => 1 - probabilityOutside(6 - by, 0.3, NONE, 6);
  expect(inside(0)).toBeCloseTo(0.5, 12);
  expect(inside(0.3)).toBeCloseTo(0.8413447, 6);
  expect(inside(0.4935)).toBeCloseTo(0.95, 4);
  expect(probabilityOutside(5, 0, 4, 6)).toBe(0);
  expect(probabilityOutside(7, 0, 4, 6)).toBe(1);
  expect(probabilityOutside(5, NONE, 4, 6)).toBeNaN();
});

describe('a list cut by its expected share of false entries', () => {
  test('keeps the most probable while the mean of one less the chance allows', () => {
    const { kept, rates, expectedFalse } = cutByExpectedFalse([0.6, 0.95, NONE, 0.9], 0.5, 0.1);
    expect(kept).toEqual([1, 3]);
    expect(rates.map((rate) => Number(rate.toFixed(12)))).toEqual([0.05, 0.075]);
    expect(expectedFalse).toBeCloseTo(0.15, 12);
  });

  test('nothing below the least chance, nothing unknown', () => {
    expect(cutByExpectedFalse([0.4, NONE], 0.5, 1).kept).toEqual([]);
  });
});

describe('supply against the rating plate (common practice, no source)', () => {
  test('only static above the maximum means shut and correct first', () => {
    expect(staticVerdict(3600, 3487)).toBe('over_maximum');
    expect(staticVerdict(3487, 3487)).toBe('within');
    expect(staticVerdict(NONE, 3487)).toBe('unknown');
    expect(staticVerdict(3600, NONE)).toBe('unknown');
  });

  test('running under the minimum means do not tune', () => {
    expect(runningVerdict(1100, 1245)).toBe('under_minimum');
    expect(runningVerdict(1245, 1245)).toBe('within');
    expect(runningVerdict(NONE, 1245)).toBe('unknown');
  });

  test('a drop moves O2 only near the minimum inlet of the appliance regulator', () => {
    expect(supplyMovesOxygen(1300, 1245)).toBe(true);
    expect(supplyMovesOxygen(1900, 1245)).toBe(false);
    expect(supplyMovesOxygen(1900, NONE)).toBe(false);
  });
});

test('every CO limit has a basis, a use and a source that the bibliography knows', () => {
  for (const { ppm, basis, use, source } of CO_LIMITS) {
    expect(ppm).toBeGreaterThan(0);
    expect(['air_free', 'at_3pct_o2', 'as_measured']).toContain(basis);
    expect(use).not.toBe('');
    expect(SAFETY_SOURCES[source].full).not.toBe('');
  }
});
