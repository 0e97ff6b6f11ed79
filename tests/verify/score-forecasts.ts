import { fitLanes, type LaneStates } from '../../shared/foresight/fit-fleet.ts';
import { fitModel } from '../../shared/foresight/fit-model.ts';
import type { FleetReadings } from '../../shared/foresight/fleet-readings.ts';
import { type Band, chanceOutWithin } from '../../shared/foresight/leaving-chance.ts';
import { solveShared, sumEquations } from '../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR, type Spread } from '../../shared/foresight/spread.ts';
import { passTwoBarriers } from '../../shared/statistics/first-passage.ts';
import { studentQuantile } from '../../shared/statistics/student.ts';
import { type FleetPlan, type SimulatedFleet, simulateFleet } from './simulate-fleet.ts';

/** How well a fit does on fleets whose truth is known. */
export interface Score {
  /** Share of true rates inside the 95 % interval. */
  readonly coverage: number;
  readonly levelCoverage: number;
  /** Mean width of those intervals over the mean width with the hyperparameters known. */
  readonly width: number;
  /** Expected Brier skill over that of the true levels, rates and hyperparameters. */
  readonly skill: number;
  /** The same over the skill of the fit with the hyperparameters known: the most that the readings can tell. */
  readonly skillOfReadings: number;
  /** Mean chance told, and mean chance in truth. */
  readonly told: number;
  readonly truth: number;
  /** Fleets in which the months of the gas zones were found to differ. */
  readonly zoned: number;
  /** Per fleet: how much they were found to differ. */
  readonly zones: readonly number[];
}

/** What is done to the readings before they are fitted. */
type Alter = (readings: FleetReadings) => FleetReadings;
const asIs: Alter = (readings) => readings;

const YEARS = 1.5;

/** Sums over the lanes of all fleets. */
export function scoreForecasts(plan: FleetPlan, seeds: readonly number[], reach: Band, alter: Alter = asIs): Score {
  const sums = { lanes: 0, covered: 0, levels: 0, width: 0, knownWidth: 0, zoned: 0 };
  const chances: { told: number; known: number; truth: number }[] = [];
  const zones: number[] = [];
  for (const seed of seeds) {
    const fleet = simulateFleet({ ...plan, seed });
    const fit = fitModel(alter(fleet.readings), { prior: DRIFT_PRIOR, sample: 400, seed: 1 });
    const { program } = fit.written;
    const zone = program.shared.zoneMonths > 0 ? Math.max(plan.zoneSd, 1e-3) : 0;
    if (zone > 0) sums.zoned++;
    zones.push(fit.estimate.spread.zone);
    const spread = { ...knownSpread(plan, fit.estimate.spread), zone };
    const known = fitLanes(
      program,
      spread,
      solveShared(sumEquations(program, spread), program.shared, spread, DRIFT_PRIOR),
    );
    const band = { lower: fleet.target + reach.lower, upper: fleet.target + reach.upper };
    const deviations = studentQuantile(0.975, Math.max(3, fleet.rate.length - plan.classes));
    for (let lane = 0; lane < fleet.rate.length; lane++) {
      const { states } = fit;
      const sd = Math.sqrt(states.rateVariance[lane]);
      sums.lanes++;
      sums.width += deviations * sd;
      sums.knownWidth += 1.96 * Math.sqrt(known.rateVariance[lane]);
      if (Math.abs(fleet.rate[lane] - states.rate[lane]) < deviations * sd) sums.covered++;
      if (Math.abs(fleet.level[lane] - states.level[lane]) < 1.96 * Math.sqrt(states.levelVariance[lane]))
        sums.levels++;
      chances.push({
        told: chanceOf(fit.states, lane, fit.estimate.spread, band),
        known: chanceOf(known, lane, spread, band),
        truth: trueChance(fleet, lane, plan, band),
      });
    }
  }
  const skill = skillOf(chances, ({ told }) => told);
  return {
    coverage: sums.covered / sums.lanes,
    levelCoverage: sums.levels / sums.lanes,
    width: sums.width / sums.knownWidth,
    skill: skill / skillOf(chances, ({ truth }) => truth),
    skillOfReadings: skill / skillOf(chances, ({ known }) => known),
    told: chances.reduce((sum, { told }) => sum + told, 0) / sums.lanes,
    truth: chances.reduce((sum, { truth }) => sum + truth, 0) / sums.lanes,
    zoned: sums.zoned,
    zones,
  };
}

/** The simulation's own standard deviations; what it has none for is taken from the fit. */
function knownSpread(plan: FleetPlan, fitted: Spread): Spread {
  return {
    ...fitted,
    reading: plan.reading,
    secondReading: plan.second?.noise ?? fitted.secondReading,
    settling: fitted.settling === 0 ? 0 : Math.max(plan.settling, 1e-4),
    visit: Math.max(plan.visit, 1e-4),
    wander: plan.wander,
    rate: plan.rateSd,
    rateWander: 1e-4,
    analyzer: plan.analyzerSd,
    secondAnalyzer: plan.second?.analyzerSd ?? fitted.secondAnalyzer,
    classRate: 0.1,
  };
}

function chanceOf(states: LaneStates, lane: number, spread: Spread, band: Band): number {
  const state = {
    level: states.level[lane],
    rate: states.rate[lane],
    levelVariance: states.levelVariance[lane],
    rateVariance: states.rateVariance[lane],
    covariance: states.covariance[lane],
    wander: spread.wander,
    rateWander: spread.rateWander,
  };
  return chanceOutWithin(state, band, YEARS);
}

function trueChance({ level, rate }: SimulatedFleet, lane: number, { wander }: FleetPlan, band: Band): number {
  const motion = { drift: rate[lane], driftSd: 0, diffusion: wander };
  return passTwoBarriers(band.upper - level[lane], level[lane] - band.lower, motion, YEARS);
}

/** Expected Brier skill against the mean chance: the outcome is drawn with the true chance. */
function skillOf<C extends { readonly truth: number }>(chances: readonly C[], told: (chance: C) => number): number {
  const mean = chances.reduce((sum, { truth }) => sum + truth, 0) / chances.length;
  const score = (told: (chance: C) => number): number =>
    chances.reduce((sum, chance) => sum + (told(chance) - chance.truth) ** 2 + chance.truth * (1 - chance.truth), 0);
  return 1 - score(told) / score(() => mean);
}
