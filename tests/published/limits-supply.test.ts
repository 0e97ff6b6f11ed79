/**
 * Common practice, no source: running supply pressure at high fire is not more than 1 in. w.c. below static on low-pressure
 * service, so that 9.9 static allows 8.9; above the rating plate's maximum the supply is shut and corrected before anything
 * else; under its minimum nobody tunes. 1 in. w.c. is 249.08891 Pa (conventional; NIST SP 811, from memory).
 */
import { expect, test } from 'vitest';
import { LOW_PRESSURE_DROP_LIMIT_PA } from '../../shared/foresight/supply-limits.ts';
import { runningVerdict, staticVerdict } from '../../shared/limits/supply-verdicts.ts';
import { verdictOf } from '../../shared/limits/verdict.ts';
import { convert } from '../../shared/quantities/convert.ts';
import { raisedOf } from '../cells/raise/judge.ts';

const inches = (value: number): number => convert(value, 'inwc', 'Pa');

test.each([
  [9.9, 8.9, 'within'],
  [9.9, 8.8, 'outside'],
  [7.0, 6.2, 'within'],
] as const)('%s in. w.c. static, %s running: a drop %s its limit', (atRest, running, verdict) => {
  // Readings carry one digit: a drop of exactly the limit is within it.
  const drop = Math.round((inches(atRest) - inches(running)) * 1e6) / 1e6;
  expect(verdictOf(drop, Number.NaN, LOW_PRESSURE_DROP_LIMIT_PA)).toBe(verdict);
});

test('a plate of 5 to 14 in. w.c.: 14.2 static is over, 4.8 running is under, in any unit', () => {
  expect(staticVerdict(inches(14.2), inches(14))).toBe('over_maximum');
  expect(staticVerdict(convert(35.4, 'mbar', 'Pa'), inches(14))).toBe('over_maximum');
  expect(staticVerdict(inches(14), inches(14))).toBe('within');
  expect(runningVerdict(inches(4.8), inches(5))).toBe('under_minimum');
});

test('above the maximum is a safety fact that comes before any drift, and says to shut and correct first', async () => {
  const [first, second] = await raisedOf({
    accepted: {
      unit: ['A'],
      taken_at: ['2026-03-01'],
      fire: ['high'],
      state: ['as_found'],
      supply_static_Pa: [inches(14.2)],
    },
    'supply-limits': { unit: ['A'], supply_max_Pa: [inches(14)] },
    drift: {
      unit: ['A'],
      fire: ['high'],
      quantity: ['o2_pct'],
      level_now: [9],
      level_now_sd: [0.1],
      lower_limit: [3],
      upper_limit: [5],
      probability_out_by_horizon: [1],
    },
  });
  expect(first.reason).toBe('supply_over_maximum');
  expect(first.checkFirst).toMatch(/^Shut the gas and correct the supply first/);
  expect(second.reason).toBe('out_of_tolerance');
});
