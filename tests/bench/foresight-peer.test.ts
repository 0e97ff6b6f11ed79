import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fitModel } from '../../shared/foresight/fit-model.ts';
import { DRIFT_PRIOR, type Spread } from '../../shared/foresight/spread.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { PLAIN_FLEET, type SimulatedFleet, simulateFleet } from '../verify/simulate-fleet.ts';

/**
 * The part of the model that R's lme4 can express: lanes with a level and a rate of their own about their class's, a visit
 * that its fires share, biased analyzers; nobody adjusts, and no level wanders.
 */
const PLAN = { ...PLAIN_FLEET, units: 1500, analyzers: 20, adjustBeyond: 99, wander: 1e-6, recordLeft: false };

/** Reads the readings, fits them by REML, prints seconds and the rates of the lanes' variance and the analyzers'. */
const SCRIPT = `
suppressMessages(library(lme4))
d <- read.csv(commandArgs(TRUE)[1])
for (name in c("lane", "visit", "analyzer", "class")) d[[name]] <- factor(d[[name]])
t <- system.time(m <- suppressMessages(suppressWarnings(
  lmer(o2 ~ class:year + (1 + year | lane) + (1 | visit) + (1 | analyzer), d))))
v <- as.data.frame(VarCorr(m))
sd <- v$sdcor[which(v$var1 == "year" & is.na(v$var2))]
cat(t["elapsed"], t["user.self"] + t["sys.self"], sd, v$sdcor[v$grp == "analyzer"],
  as.character(packageVersion("lme4")), R.version.string, sep = "\\n")
`;

function csvOf({ readings }: SimulatedFleet): string {
  const lines = Array.from({ length: readings.rows }, (_, row) => {
    const { lane, day, analyzer, unit, first, lanes } = readings;
    const year = (day[row] - 14_000) / DAYS_PER_YEAR;
    return [lane[row], `${unit[row]}-${day[row]}`, analyzer[row], lanes.classOf[lane[row]], year, first[row]].join(',');
  });
  return ['lane,visit,analyzer,class,year,o2', ...lines].join('\n');
}

function timed({ readings }: SimulatedFleet, sample: number): { seconds: number; told: string; spread: Spread } {
  const started = performance.now();
  const used = process.cpuUsage();
  const { estimate } = fitModel(readings, { prior: DRIFT_PRIOR, sample, seed: 1 });
  const seconds = (performance.now() - started) / 1000;
  const { user, system } = process.cpuUsage(used);
  return {
    seconds,
    told: `${seconds.toFixed(2)} s (${((user + system) / 1e6).toFixed(2)} s)`,
    spread: estimate.spread,
  };
}

const hasPeer = spawnSync('Rscript', ['-e', 'library(lme4)']).status === 0;
if (!hasPeer) console.log('R with lme4 is not installed here: its comparison is left out.');

test.skipIf(!hasPeer)('rates and analyzers beside lme4, on the same readings', () => {
  const fleet = simulateFleet(PLAN);
  const folder = mkdtempSync(join(tmpdir(), 'between-visits-'));
  const file = join(folder, 'readings.csv');
  writeFileSync(file, csvOf(fleet));
  const peer = spawnSync('Rscript', ['-e', SCRIPT, file], { encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  expect(peer.status, peer.stderr).toBe(0);
  const [elapsed, processor, rateSd, analyzerSd, version, r] = peer.stdout.trim().split('\n');

  const sampled = timed(fleet, 400);
  const whole = timed(fleet, fleet.readings.units);
  const { rate, analyzer } = whole.spread;
  console.log(
    `${fleet.readings.rows} readings of ${fleet.rate.length} lanes; lme4 ${version} (${r}): ${Number(elapsed).toFixed(2)} s (${Number(processor).toFixed(2)} s of processor).`,
    `Hyperparameters from a sample of 400 units, as the notebook does: ${sampled.told}, ${(Number(elapsed) / sampled.seconds).toFixed(1)} times as fast; from all units: ${whole.told}, ${(Number(elapsed) / whole.seconds).toFixed(1)} times.`,
    `Rates differ by ${rate.toFixed(3)} (lme4 ${Number(rateSd).toFixed(3)}, simulated ${PLAN.rateSd}), analyzers by ${analyzer.toFixed(3)} (lme4 ${Number(analyzerSd).toFixed(3)}, simulated ${PLAN.analyzerSd}).`,
  );
  // Two programs that fit the same model agree on its main result.
  expect(Math.abs(rate - Number(rateSd))).toBeLessThan(0.03);
});
