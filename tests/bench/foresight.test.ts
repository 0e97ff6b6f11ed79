import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { judgeShard } from '../../cells/drift/judge-in-shards.ts';
import { enlist, type Host } from '../../shared/crew.ts';
import { DEFAULT_BANDS } from '../../shared/foresight/default-bands.ts';
import { type FleetFit, fittingModel } from '../../shared/foresight/fit-model.ts';
import { tracePasses } from '../../shared/foresight/fleet-passes.ts';
import type { LevelState } from '../../shared/foresight/leaving-chance.ts';
import { LookBack } from '../../shared/foresight/look-back.ts';
import { scoreLookBack } from '../../shared/foresight/score-look-back.ts';
import { DRIFT_PRIOR } from '../../shared/foresight/spread.ts';
import { byPieces } from '../../shared/pieces.ts';
import { threadHelper } from '../../src/cli/thread-helper.ts';
import { HelperPool } from '../../src/notebook/crews/helper-pool.ts';
import { PLAIN_FLEET, simulateFleet } from '../verify/simulate-fleet.ts';
import { tablesOfFleet } from '../verify/tables-of-fleet.ts';

const ROOT = join(import.meta.dirname, '../..');
/** The command line, whose file serves crews when it runs in a thread. */
const BUILT = join(ROOT, 'dist/cli/main.js');
/** As the drift cell cuts them. */
const LANES_A_SHARD = 1024;
type LaneCase = Parameters<typeof judgeShard>[0][number];

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
async function wholeModel(series: number, threads: number): Promise<string> {
  const plan = { ...PLAIN_FLEET, units: series / 2, analyzers: 40, classes: 12, adjustBeyond: 0.1 };
  const { readings, target } = simulateFleet(plan);
  const pool = threads > 1 ? new HelperPool(threads, () => threadHelper(BUILT)) : undefined;
  const { signal } = new AbortController();
  const host: Host = {
    pause: async () => undefined,
    ...(pool ? { helpers: async (work, shards) => pool.enlist('drift', work, shards, signal) } : {}),
  };
  globalThis.gc?.();
  const lap = stopwatch();
  const began = performance.now();
  const parts: string[] = [];
  const note = (name: string): number => parts.push(`${name} ${lap()}`);
  const { fit, passes } = await byPieces(fittingModel(readings, { prior: DRIFT_PRIOR, sample: 400, seed: 1 }), host);
  note('fit');
  const trace = await byPieces(tracePasses(passes, fit.estimate.spread, fit.effects), host);
  note('paths');
  const shards = casesOf(fit, target);
  const crew = await enlist(host, 'judge', judgeShard, shards);
  const judged = (await crew.ask(undefined)).flat();
  crew.dismiss();
  note('chances and dates');
  const seconds = (performance.now() - began) / 1000;
  pool?.end();
  expect(trace.level.length).toBeGreaterThan(series);
  expect(judged.filter(({ outBy }) => outBy > 0).length).toBeGreaterThan(0);
  const peak = process.resourceUsage().maxRSS / 1000;
  const how = threads > 1 ? `${threads} helper threads` : 'one thread';
  return `${series} series, ${readings.rows} readings, ${how}: ${seconds.toFixed(1)} s (${parts.join(', ')}); ${Math.round(peak)} MB at most so far`;
}

/** Lanes against one band, in shards as the drift cell cuts them. */
function casesOf({ states, estimate, written }: FleetFit, target: number): LaneCase[][] {
  const [lower, upper] = [target - 0.8, target + 1];
  const band = {
    quantity: 'o2_pct',
    source: 'setting',
    target,
    lower,
    upper,
    settingLower: lower,
    settingUpper: upper,
  } as const;
  const cases = Array.from(states.level, (level, lane): LaneCase => {
    const lastVisit = written.series.to[lane];
    const state: LevelState = {
      level,
      rate: states.rate[lane],
      levelVariance: states.levelVariance[lane],
      rateVariance: states.rateVariance[lane],
      covariance: states.covariance[lane],
      wander: estimate.spread.wander,
      rateWander: estimate.spread.rateWander,
    };
    const asOf = lastVisit + 180;
    return {
      question: { state, lastVisit, asOf, horizon: asOf + 365, reason: '', noChance: '', dates: true },
      band,
    };
  });
  return Array.from({ length: Math.ceil(cases.length / LANES_A_SHARD) }, (_, shard) =>
    cases.slice(shard * LANES_A_SHARD, (shard + 1) * LANES_A_SHARD),
  );
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
  beforeAll(() => {
    const done = spawnSync(process.execPath, [join(ROOT, 'src/cli/run.mjs'), 'build'], { stdio: 'inherit' });
    expect(done.status).toBe(0);
  }, 120_000);

  test.each([
    [1_000, 1],
    [10_000, 1],
    [100_000, 1],
    [100_000, 2],
  ])('%i series of eight visits, threads: %i', async (series, threads) => {
    console.log(await wholeModel(series, threads));
  });
});
