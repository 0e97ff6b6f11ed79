import { expect, test } from 'vitest';
import type { DriftResult } from '../../../cells/drift/compute.ts';
import { DAYS_PER_YEAR } from '../../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../../shared/table/columns.ts';
import { tableOf } from '../../verify/score-review.ts';
import { reviewFleet, WRITTEN_FLEET, writeFleet } from '../../verify/written-fleet.ts';

/**
 * Written files of 80 units whose first analyzer, of four, reads 0.8 points of O2 high since the last visits but two. Crews set
 * by it then leave burners 0.8 points rich, which is true of these burners; what it reads is not.
 */
const PLAN = { ...WRITTEN_FLEET, units: 80, analyzers: 4, stepO2: 0.8, seed: 5 };
/** The first day of the year of the last visits but two; see writeFleet. */
const STEP_FROM = 15_341 + DAYS_PER_YEAR * (PLAN.visits - 3);

test('an analyzer that comes to read high is found and dated, and no unit is blamed for it', async () => {
  const fleet = writeFleet(PLAN);
  const session = await reviewFleet(fleet);
  const instruments = tableOf(session, 'instruments', 'instruments');
  const at = (name: string): string[] =>
    Array.from({ length: instruments.rows }, (_, row) => textAt(textsOf(instruments, name), row));
  expect(at('analyzer')).toEqual(['A-0', 'A-1', 'A-2', 'A-3']);
  expect(at('verdict')[0]).toBe('biased');
  const [bias, before, offSince] = ['o2_bias_pct', 'o2_bias_before_pct', 'off_since'].map((name) =>
    numbersOf(instruments, name),
  );
  // Four standard deviations of 0.03, which is what the fit says of a bias since the change.
  expect(Math.abs(bias[0] - before[0] - PLAN.stepO2)).toBeLessThan(0.12);
  expect(offSince[0] - STEP_FROM).toBeGreaterThanOrEqual(0);
  expect(offSince[0] - STEP_FROM).toBeLessThan(DAYS_PER_YEAR / 2);
  expect([...offSince.slice(1)].every((day) => Number.isNaN(day) || day < STEP_FROM)).toBe(true);

  const raised = tableOf(session, 'raise', 'raised');
  const reasons = Array.from({ length: raised.rows }, (_, row) => textAt(textsOf(raised, 'reason'), row));
  expect(reasons).not.toContain('scatter_growing');

  // Levels in force after a last visit with it are no further from the truth than the others: two standard deviations of their mean.
  const { lanes, states } = (session.result('drift') as DriftResult).fitted;
  const level = new Map(lanes.map(({ unit, fire }, lane) => [`${unit} ${fire}`, states.level[lane]]));
  const lastBy = new Map(fleet.readings.split('\n').map((line) => [line.split(',')[0], line.split(',').at(-1)]));
  const errors = (by: boolean): number[] =>
    fleet.truth
      .filter(({ unit }) => (lastBy.get(unit) === 'A-0') === by)
      .map((lane) => (level.get(`${lane.unit} ${lane.fire}`) ?? Number.NaN) - lane.level);
  const mean = (values: number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [own, others] = [errors(true), errors(false)];
  expect(own.length).toBeGreaterThan(20);
  expect(Math.abs(mean(own) - mean(others))).toBeLessThan(0.06);
});
