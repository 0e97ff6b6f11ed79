import { describe, expect, test } from 'vitest';
import { gasLines } from '../../../shared/foresight/gas-lines.ts';
import { supplyPatterns } from '../../../shared/foresight/supply-patterns.ts';
import type { UnitSupply } from '../../../shared/foresight/supply-readings.ts';
import { tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { checkSupplyDrop } from '../../../shared/messages/raise.ts';
import { unitsSchema } from '../../../shared/schemas/register.ts';
import { normals, seededRandom } from '../../verify/simulate-fleet.ts';

// What each pattern looks like in the columns: common practice, no source.

type Course = (visit: number) => number;
const still: Course = () => 0;
const slope =
  (perYear: number): Course =>
  (visit) =>
    perYear * visit;

/** Pressures of one unit over yearly visits: where static and running go, and how far both repeat, in pascals. */
function simulate(
  name: string,
  normal: () => number,
  fixed: Course,
  running: Course,
  strays = 0,
  visits = 8,
): UnitSupply {
  const days = Array.from({ length: visits }, (_, visit) => 17_000 + Math.round(365 * visit + 40 * normal()));
  const atRest = days.map((_, visit) => 2000 + fixed(visit) + 6 * normal());
  const runs = days.map((_, visit) => 1880 + running(visit) + 6 * normal() + strays * normal());
  const drop = atRest.map((value, i) => value - runs[i]);
  return { unit: name, days, drop, fixed: atRest, running: runs, lastFixed: 2000, lastRunning: 1880, normalized: 0 };
}

const none = (): readonly string[] => [];
const FLEETS = 40;

/** How often one faulty unit among twenty steady ones is called `wanted`, and how often a steady one anything but steady. */
function tally(wanted: string, fixed: Course, running: Course, strays = 0): { found: number; wrong: number } {
  let [found, wrong] = [0, 0];
  for (let seed = 1; seed <= FLEETS; seed++) {
    const normal = normals(seededRandom(seed * 31 + 7));
    const steady = Array.from({ length: 20 }, (_, i) => simulate(`S-${i}`, normal, still, still));
    const told = supplyPatterns([...steady, simulate('F', normal, fixed, running, strays)], none);
    if (told[20] === wanted) found++;
    wrong += told.slice(0, 20).filter((pattern) => pattern !== 'steady').length;
  }
  return { found: found / FLEETS, wrong: wrong / (20 * FLEETS) };
}

describe('what the columns of a unit fit', () => {
  test.each([
    ['restriction', 'drop up with static still: filter, cock or pipe between', still, slope(-15), 0],
    ['regulator', 'static and running down together', slope(-15), slope(-15), 0],
    ['creep', 'static up alone', slope(15), still, 0],
    ['hunting', 'running strays from reading to reading', still, still, 70],
  ] as const)('%s: %s', (pattern, _, fixed, running, strays) => {
    const { found, wrong } = tally(pattern, fixed, running, strays);
    expect(found).toBeGreaterThanOrEqual(0.9);
    expect(wrong).toBeLessThanOrEqual(0.05);
  });

  test('a service pressure that varies for all, static and running alike, is not hunting', () => {
    const normal = normals(seededRandom(5));
    const swing = Array.from({ length: 8 }, () => 80 * normal());
    const units = Array.from({ length: 8 }, (_, i) =>
      simulate(
        `V-${i}`,
        normal,
        (visit) => swing[visit],
        (visit) => swing[visit],
      ),
    );
    expect(supplyPatterns(units, none)).not.toContain('hunting');
  });

  test('few units: scatter beyond a quarter inch of water is hunting by itself', () => {
    const normal = normals(seededRandom(9));
    const units = [simulate('A', normal, still, still), simulate('B', normal, still, still, 120)];
    expect(supplyPatterns(units, none)).toEqual(['steady', 'hunting']);
  });

  test('too few readings: nothing is said', () => {
    const normal = normals(seededRandom(3));
    expect(supplyPatterns([simulate('A', normal, still, slope(-50), 0, 4)], none)).toEqual(['']);
  });
});

describe('several units that fall together', () => {
  const register = (zones: readonly string[], buildings: readonly string[]) =>
    gasLines(
      tableOfRecords(
        unitsSchema,
        zones.map((zone, i) => ({ unit: `U-${i}`, site: 'Hill', building: buildings[i], gas_zone: zone })),
      ),
    );
  const fleet = (falls: readonly boolean[]): UnitSupply[] => {
    const normal = normals(seededRandom(12));
    return falls.map((fall, i) => simulate(`U-${i}`, normal, still, fall ? slope(-15) : still));
  };

  test('on one gas zone: their line, not each for itself', () => {
    const lines = register(['east', 'east', 'east', 'west', 'west'], ['', '', '', '', '']);
    expect(supplyPatterns(fleet([true, true, true, false, false]), lines)).toEqual([
      'shared_line',
      'shared_line',
      'shared_line',
      'steady',
      'steady',
    ]);
  });

  test('in one building, of a zone that otherwise stands', () => {
    const lines = register(Array(6).fill('east'), ['A', 'A', 'B', 'B', 'C', 'C']);
    const told = supplyPatterns(fleet([true, true, false, false, false, false]), lines);
    expect(told.slice(0, 2)).toEqual(['shared_line', 'shared_line']);
    expect(told.slice(2)).toEqual(['steady', 'steady', 'steady', 'steady']);
  });

  test('one alone on its line, and two of many: each for itself', () => {
    const lines = register(Array(6).fill('east'), ['A', 'B', 'C', 'D', 'E', 'F']);
    expect(supplyPatterns(fleet([true, false, false, false, false, false]), lines)[0]).toBe('restriction');
    expect(supplyPatterns(fleet([true, true, false, false, false, false]), lines)[0]).toBe('restriction');
  });
});

test.each(['restriction', 'regulator', 'creep', 'shared_line', 'hunting'])(
  '%s has a first thing to check',
  (pattern) => {
    expect(checkSupplyDrop(pattern)).not.toBe(checkSupplyDrop(''));
    expect(checkSupplyDrop(pattern)).toMatch(/before touching the air/);
  },
);
