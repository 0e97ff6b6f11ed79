import { expect, test } from 'vitest';
import { analyzerChanges } from '../../shared/foresight/analyzer-change.ts';
import { intervalsOf } from '../../shared/foresight/analyzer-intervals.ts';
import { fitModel } from '../../shared/foresight/fit-model.ts';
import { DRIFT_PRIOR } from '../../shared/foresight/spread.ts';
import { PLAIN_FLEET, simulateFleet } from './simulate-fleet.ts';

const SEEDS = 40;
const ANALYZERS = 5;
/** Half of the years that a fleet is read over. */
const BEGAN = 12_000 + 4 * 365;

/** The changes told of each analyzer; the first one's readings are shifted from the given day on. */
function told(seed: number, shift: number): (number | undefined)[] {
  const { readings } = simulateFleet({ ...PLAIN_FLEET, analyzers: ANALYZERS, adjustBeyond: 0.6, setting: 0.1, seed });
  const first = readings.first.map((value, row) =>
    readings.analyzer[row] === 0 && readings.day[row] >= BEGAN ? value + shift : value,
  );
  const fleet = { ...readings, first };
  const fit = fitModel(fleet, { prior: DRIFT_PRIOR, sample: 400, seed: 1 });
  const none = new Int32Array(0);
  const read = {
    fleet,
    sourceRow: none,
    lanes: [],
    analyzers: [],
    fuels: [],
    co2max: new Float64Array(0),
    zoneMonths: [],
  };
  const intervals = intervalsOf(read, fit);
  const biases = fit.effects.values.slice(0, ANALYZERS);
  return analyzerChanges(intervals, biases).map((change) => change?.on);
}

test('analyzers that read alike all years are not told to have changed', () => {
  let changes = 0;
  for (let seed = 1; seed <= SEEDS; seed++) changes += told(seed, 0).filter((on) => on !== undefined).length;
  console.log(`${changes} of ${SEEDS * ANALYZERS} steady analyzers told to have changed`);
  expect(changes / (SEEDS * ANALYZERS)).toBeLessThanOrEqual(0.02);
});

test('half a point from one day on is found 9 times in 10, and dated within a year', () => {
  let [found, near] = [0, 0];
  for (let seed = 1; seed <= SEEDS; seed++) {
    const [on] = told(seed, 0.5);
    if (on === undefined) continue;
    found++;
    if (Math.abs(on - BEGAN) < 365) near++;
  }
  console.log(`${found} of ${SEEDS} found, ${near} within a year`);
  expect(found / SEEDS).toBeGreaterThanOrEqual(0.9);
  expect(near / found).toBeGreaterThanOrEqual(0.8);
});
