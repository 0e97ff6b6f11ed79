import { describe, expect, test } from 'vitest';
import { DEFAULT_BANDS } from '../../shared/foresight/default-bands.ts';
import { fittingModel } from '../../shared/foresight/fit-model.ts';
import { tracePasses } from '../../shared/foresight/fleet-passes.ts';
import { chanceOutWithin, type LevelState } from '../../shared/foresight/leaving-chance.ts';
import { LookBack } from '../../shared/foresight/look-back.ts';
import { scoreLookBack } from '../../shared/foresight/score-look-back.ts';
import { DRIFT_PRIOR } from '../../shared/foresight/spread.ts';
import { yearsUntilChance } from '../../shared/foresight/years-until-chance.ts';
import { atOnce } from '../../shared/pieces.ts';
import { PLAIN_FLEET, simulateFleet } from '../verify/simulate-fleet.ts';
import { tablesOfFleet } from '../verify/tables-of-fleet.ts';

/** Seconds since the last call: by the wall clock, and of processor time (other programs may share the machine). */
function stopwatch(): () => string {
  let last = performance.now();
  let used = process.cpuUsage();
  return () => {
    const wall = (performance.now() - last) / 1000;
    const processor = process.cpuUsage(used);
    last = performance.now();
    used = process.cpuUsage();
    return `${wall.toFixed(2)} (${((processor.user + processor.system) / 1e6).toFixed(2)}) s`;
  };
}

/** Fits and judges a simulated fleet of two lanes a unit, eight visits each, mostly with found and left readings. */
function wholeModel(series: number): string {
  const plan = { ...PLAIN_FLEET, units: series / 2, analyzers: 40, classes: 12, adjustBeyond: 0.1 };
  const { readings, target } = simulateFleet(plan);
  globalThis.gc?.();
  const lap = stopwatch();
  const parts: string[] = [];
  const note = (name: string): number => parts.push(`${name} ${lap()}`);
  const { fit, passes } = atOnce(fittingModel(readings, { prior: DRIFT_PRIOR, sample: 400, seed: 1 }));
  note('steps, hyperparameters, months of the gas, shared effects and lanes');
  const { states, effects } = fit;
  const { spread } = fit.estimate;
  const trace = atOnce(tracePasses(passes, spread, effects));
  note('paths');
  const band = { lower: target - 0.8, upper: target + 1 };
  let out = 0;
  for (let lane = 0; lane < series; lane++) {
    const state: LevelState = {
      level: states.level[lane],
      rate: states.rate[lane],
      levelVariance: states.levelVariance[lane],
      rateVariance: states.rateVariance[lane],
      covariance: states.covariance[lane],
      wander: spread.wander,
      rateWander: spread.rateWander,
    };
    out += chanceOutWithin(state, band, 1.5);
    yearsUntilChance(state, band, [0.1, 0.5, 0.9], 6);
  }
  note('chances and dates');
  expect(trace.level.length).toBeGreaterThan(series);
  expect(out).toBeGreaterThan(0);
  const memory = process.memoryUsage();
  return `${series} series, ${readings.rows} readings: ${parts.join(', ')}; ${Math.round(memory.rss / 1e6)} MB`;
}

test('looking back over 8 years of 1,000 units', () => {
  const fleet = simulateFleet({ ...PLAIN_FLEET, units: 1000, visits: 9, analyzers: 12 });
  const tables = tablesOfFleet(fleet);
  const asOf = Math.floor(Math.max(...fleet.lastDay));
  const lap = stopwatch();
  const lookBack = new LookBack(tables, asOf, {
    seed: 1,
    referenceAir: true,
    horizonDays: 365,
    quantity: 'as_target',
    bands: DEFAULT_BANDS,
  });
  const forecasts = Array.from({ length: 32 }, (_, i) => lookBack.on(asOf - Math.round((32 - i) * 91.3125))).flat();
  const score = scoreLookBack(forecasts, 0.5);
  console.log(`32 quarters, ${forecasts.length} forecasts: ${lap()}; ${JSON.stringify(score)}`);
  expect(score.forecasts).toBeGreaterThan(1000);
});

describe('the whole model', () => {
  test.each([1_000, 10_000, 100_000])('%i series of eight visits', (series) => {
    const started = performance.now();
    const told = wholeModel(series);
    console.log(`${told}; ${((performance.now() - started) / 1000).toFixed(1)} s with the simulation`);
  });
});
