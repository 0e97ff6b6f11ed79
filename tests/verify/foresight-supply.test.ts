import { describe, expect, test } from 'vitest';
import { fitSupply } from '../../shared/foresight/fit-supply.ts';
import { judgeSupply } from '../../shared/foresight/judge-supply.ts';
import type { UnitSupply } from '../../shared/foresight/supply-readings.ts';
import { normals, seededRandom } from './simulate-fleet.ts';

interface SimulatedSupply {
  readonly units: UnitSupply[];
  /** Per unit: pascals a year. */
  readonly growth: number[];
}

const AS_OF = 20_500;
const OPTIONS = { horizonDays: 365, lookAheadYears: 3, falseDiscoveryRate: 0.05 };

/** One unit in eight has a filter that fills up; the others' drops only wander about with the load on the line. */
function simulate(count: number, visits: number, noise: number, seed: number, share = 1 / 8): SimulatedSupply {
  const random = seededRandom(seed * 101 + 3);
  const normal = normals(random);
  const growth = Array.from({ length: count }, () => (random() < share ? 12 + 10 * random() : 0));
  const units = growth.map((rate, i): UnitSupply => {
    const days = Array.from({ length: visits }, (_, visit) =>
      Math.round(AS_OF - 200 * random() - 365 * (visits - 1 - visit) + 40 * normal()),
    ).sort((a, b) => a - b);
    // Growing drops are so far on that the limit is near; the others stand well inside.
    const now = rate > 0 ? 249 - 2 * rate * random() - 5 : 60 + 80 * random();
    const drop = days.map((day) => now - (rate * (AS_OF - day)) / 365.25 + noise * normal());
    const fixed = days.map(() => 2000 + 10 * normal());
    const running = fixed.map((value, k) => value - drop[k]);
    const last = { lastFixed: fixed[fixed.length - 1], lastRunning: running[running.length - 1] };
    return { unit: `U-${i}`, days, drop, fixed, running, ...last, normalized: 0 };
  });
  return { units, growth };
}

function judge({ units, growth }: SimulatedSupply): { found: number; growing: number; false: number; steady: number } {
  const rows = judgeSupply(units, fitSupply(units, new Map(), 1), undefined, AS_OF, OPTIONS);
  const counts = { found: 0, growing: 0, false: 0, steady: 0 };
  rows.forEach(({ verdict }, i) => {
    const raised = verdict === 'growing' || verdict === 'over';
    if (growth[i] > 0) counts.growing++;
    else counts.steady++;
    if (raised && growth[i] > 0) counts.found++;
    if (raised && growth[i] === 0) counts.false++;
  });
  return counts;
}

describe('growing drops are found, steady ones left alone', () => {
  test.each([
    ['8 visits, 10 Pa of noise', 300, 8, 10, 6],
    ['8 visits, 15 Pa of noise', 300, 8, 15, 6],
    ['5 visits, 8 Pa of noise', 300, 5, 8, 6],
    ['26 units', 26, 9, 10, 60],
  ])('%s', (name, count, visits, noise, seeds) => {
    const total = { found: 0, growing: 0, false: 0, steady: 0 };
    for (let seed = 1; seed <= seeds; seed++) {
      const counts = judge(simulate(count, visits, noise, seed));
      for (const key of ['found', 'growing', 'false', 'steady'] as const) total[key] += counts[key];
    }
    console.log(name, JSON.stringify(total));
    expect(total.found / total.growing).toBeGreaterThanOrEqual(0.9);
    expect(total.false / total.steady).toBeLessThanOrEqual(0.05);
  });

  test('a fleet in which nothing grows: next to nothing is raised', () => {
    let raised = 0;
    for (let seed = 1; seed <= 6; seed++) raised += judge(simulate(300, 8, 15, seed, 0)).false;
    expect(raised).toBeLessThanOrEqual(3);
  });
});
