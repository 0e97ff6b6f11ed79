import { expect, test } from 'vitest';
import { truthOfCampus } from '../../sample-data/making/truth.ts';

const TRUTH = truthOfCampus();

const name = ({ unit, fire }: { unit: string; fire: string }): string => `${unit} ${fire}`;

test('the three planted drifts truly leave within a year, more likely than not, and are not out yet', () => {
  const planted = TRUTH.filter(({ outWithinYear }) => outWithinYear > 0.5);
  expect(planted.map(name).sort()).toEqual(['COB-3 low', 'EMB-2 high', 'IRO-1 high']);
  for (const { o2Now, lower, upper } of planted) expect(o2Now > lower && o2Now < upper).toBe(true);
});

test('every other lane truly stays inside for the year, with a chance of leaving below 5 %', () => {
  const restless = TRUTH.filter(({ outWithinYear }) => outWithinYear >= 0.05 && outWithinYear <= 0.5);
  expect(restless.map(name)).toEqual([]);
});
