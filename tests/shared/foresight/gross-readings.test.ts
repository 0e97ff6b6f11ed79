import { describe, expect, test } from 'vitest';
import { fitModel } from '../../../shared/foresight/fit-model.ts';
import { type FleetReadings, READING_STATE } from '../../../shared/foresight/fleet-readings.ts';
import { grossReadings } from '../../../shared/foresight/gross-readings.ts';
import { DRIFT_PRIOR } from '../../../shared/foresight/spread.ts';
import { PLAIN_FLEET, type SimulatedFleet, simulateFleet } from '../../verify/simulate-fleet.ts';

const { found, left } = READING_STATE;

/** One unit with one fire, read once a year with an aim of 4; whole numbers of the list stand for the year. */
function lane(rows: readonly (readonly [year: number, state: number, o2: number])[]): FleetReadings {
  const { readings } = simulateFleet({ ...PLAIN_FLEET, units: 1, visits: 2 });
  const column = <T>(pick: (row: readonly [number, number, number]) => T): T[] => rows.map(pick);
  return {
    ...readings,
    rows: rows.length,
    lane: new Int32Array(rows.length),
    unit: new Int32Array(rows.length),
    day: Float64Array.from(column(([year]) => 15_000 + 365 * year)),
    state: Uint8Array.from(column(([, state]) => state)),
    first: Float64Array.from(column(([, , o2]) => o2)),
    second: new Float64Array(rows.length).fill(Number.NaN),
    aim: new Float64Array(rows.length).fill(4),
  };
}
const marked = (marks: Uint8Array): number[] => [...marks.keys()].filter((row) => marks[row] === 1);

describe('readings that no drift leads to', () => {
  test('one visit three points off is left out, and so is one of which both readings are off', () => {
    const single = lane([0, 1, 2, 3, 4].map((year) => [year, found, year === 2 ? 7.1 : 4 + 0.1 * year]));
    expect(marked(grossReadings(single).gross)).toEqual([2]);
    const both = lane([
      ...[0, 1].map((year) => [year, found, 4.1] as const),
      ...([
        [2, found, 7.1],
        [2, left, 6.9],
      ] as const),
      ...[3, 4].map((year) => [year, found, 4.2] as const),
    ]);
    expect(marked(grossReadings(both).gross)).toEqual([2, 3]);
  });

  test('what was left far off its aim, further than before and after, was not left so', () => {
    const typed = lane([
      [0, found, 4],
      [1, found, 4.6],
      [1, left, 7],
      [2, found, 4.3],
      [3, found, 4.5],
    ]);
    expect(marked(grossReadings(typed).gross)).toEqual([2]);
  });

  test('a burner that goes far and is brought back each year is fast, not misread', () => {
    const fast = [0, 1, 2, 3, 4].flatMap(
      (year) =>
        [
          [year, found, year === 0 ? 4 : 6.3],
          [year, left, 4],
        ] as const,
    );
    const { gross, sudden } = grossReadings(lane(fast));
    expect([...marked(gross), ...marked(sudden)]).toEqual([]);
  });

  test('a last visit far off begins a level of its own where no other step of the fire was like it', () => {
    const steady = [0, 1, 2, 3].map((year) => [year, found, 4 + 0.2 * year] as const);
    expect(marked(grossReadings(lane([...steady, [4, found, 7.6]])).sudden)).toEqual([4]);
    expect(marked(grossReadings(lane([...steady, [4, found, 4.7]])).sudden)).toEqual([]);
  });
});

describe('a fleet of which some readings are three points off', () => {
  const plan = { ...PLAIN_FLEET, units: 60, visits: 6, reading: 0.1, visit: 0.05 };
  const options = { prior: DRIFT_PRIOR, sample: 400, seed: 1 };

  /** One reading in a hundred, either way. */
  function spoilt({ readings, random }: SimulatedFleet): FleetReadings {
    const first = readings.first.map((o2) => (random() < 0.01 ? o2 + (random() < 0.5 ? -3 : 3) : o2));
    return { ...readings, first };
  }
  function covered(fleet: SimulatedFleet, readings: FleetReadings): number {
    const { states } = fitModel(readings, options);
    const near = [...fleet.rate].filter(
      (rate, of) => Math.abs(states.rate[of] - rate) < 1.96 * Math.sqrt(states.rateVariance[of]),
    );
    return near.length / fleet.rate.length;
  }

  test('their rates are covered, and the fleet is not taken to wander by them', () => {
    const fleet = simulateFleet(plan);
    const readings = spoilt(fleet);
    const { gross, sudden } = grossReadings(readings);
    expect(marked(gross).length + marked(sudden).length).toBeGreaterThan(0);
    const first = readings.first.map((o2, row) => (gross[row] === 1 ? Number.NaN : o2));
    const cleaned = { ...readings, first, sudden };
    // What wanders by 0.2 a year; three standard errors of a standard deviation from 600 steps are a tenth of it.
    expect(fitModel(cleaned, options).estimate.spread.wander).toBeLessThan(0.26);
    // 120 lanes of 95 %: three standard errors below it are 0.89.
    expect(covered(fleet, cleaned)).toBeGreaterThan(0.89);
  });
});
