import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { fitLanes } from '../../../shared/foresight/fit-fleet.ts';
import { columnsOf, type FleetProgram, STEP } from '../../../shared/foresight/fleet-program.ts';
import { solveShared, sumEquations } from '../../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR, type Spread } from '../../../shared/foresight/spread.ts';
import { traceLanes } from '../../../shared/foresight/trace-lanes.ts';
import { ProgramWriter } from '../../../shared/foresight/write-program.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';

/**
 * The same model written out as one big normal distribution: every reading is a row, every random quantity (levels at
 * the start of a run, rates, steps of wandering, visit effects, biases, class rates, noise) a column, solved densely.
 * A level that starts anew is a column with a prior so wide that it is as good as free.
 */
interface Dense {
  readonly design: number[][];
  readonly y: number[];
  readonly noise: number[];
  readonly priors: number[];
  readonly levelNow: number[][];
  readonly rateNow: number[][];
}

const WIDE = 1e4;

function writeOut(program: FleetProgram, spread: Spread): Dense {
  const shared = columnsOf(program.shared);
  const { analyzers, secondAnalyzers, classes } = program.shared;
  const priors: number[] = [];
  for (let i = 0; i < shared; i++) {
    const sd =
      i < analyzers
        ? spread.analyzer
        : i < analyzers + secondAnalyzers
          ? spread.secondAnalyzer
          : i < analyzers + secondAnalyzers + classes
            ? spread.classRate
            : i < shared - program.shared.zoneMonths
              ? DRIFT_PRIOR.offset
              : spread.zone;
    priors.push(sd * sd);
  }
  const fleetRate = priors.push(DRIFT_PRIOR.fleetRate ** 2) - 1;
  const design: number[][] = [];
  const y: number[] = [];
  const noise: number[] = [];
  const levelNow: number[][] = [];
  const rateNow: number[][] = [];
  const add = (into: number[], column: number, value = 1): void => {
    into[column] = (into[column] ?? 0) + value;
  };
  const plus = (a: number[], b: number[], factor = 1): number[] => {
    const sum = a.slice();
    b.forEach((value, i) => {
      add(sum, i, value * factor);
    });
    return sum;
  };
  for (let unit = 0; unit < program.units; unit++) {
    const lanes = program.unitLanes[unit + 1] - program.unitLanes[unit];
    const level: number[][] = Array.from({ length: lanes }, () => []);
    const rate: number[][] = Array.from({ length: lanes }, () => []);
    let visit: number[] = [];
    let settled = -1;
    for (let step = program.unitSteps[unit]; step < program.unitSteps[unit + 1]; step++) {
      const lane = program.lane[step];
      const value = program.value[step];
      const columnOf = (place: number): number => program.columns[program.unitColumns[unit] + place];
      const kind = program.kind[step];
      if (kind === STEP.renew) {
        rate[lane] = [];
        add(rate[lane], priors.push(spread.rate ** 2) - 1);
        add(rate[lane], columnOf(program.laneClass[program.unitLanes[unit] + lane]));
        add(rate[lane], fleetRate);
      } else if (kind === STEP.visit) {
        for (let l = 0; l < lanes; l++) {
          level[l] = plus(level[l], rate[l], value);
          if (value > 0) add(level[l], priors.push(spread.wander ** 2 * value) - 1);
        }
        visit = [];
        add(visit, priors.push(spread.visit ** 2) - 1);
        if (program.biasColumn[step] >= 0) add(visit, columnOf(program.biasColumn[step]));
      } else if (kind === STEP.widen) {
        add(level[lane], priors.push(spread.unrecorded ** 2 + program.extra[step]) - 1);
      } else {
        if (kind !== STEP.read) {
          level[lane] = [];
          add(level[lane], priors.push(WIDE) - 1);
        }
        const row = plus(level[lane], visit);
        if (program.biasColumn[step] >= 0) add(row, columnOf(program.biasColumn[step]));
        if (program.offsetColumn[step] >= 0) add(row, columnOf(program.offsetColumn[step]));
        // What both cells of a reading share is a column of its own.
        if (kind !== STEP.read || program.extra[step] !== 1) settled = priors.push(spread.settling ** 2) - 1;
        add(row, settled);
        design.push(row);
        y.push(value);
        noise.push((program.cell[step] === 0 ? spread.reading : spread.secondReading) ** 2);
      }
    }
    levelNow.push(...level);
    rateNow.push(...rate);
  }
  return { design, y, noise, priors, levelNow, rateNow };
}

const filled = (rows: number[][], columns: number): Matrix =>
  new Matrix(rows.map((row) => Array.from({ length: columns }, (_, i) => row[i] ?? 0)));

describe.each([
  ['alone', 0],
  ['with the months of a gas zone', 0.2],
])('the filter against the same model written out densely, %s', (_, zone) => {
  const plan = { ...PLAIN_FLEET, units: 4, visits: 6, classes: 2, analyzers: 3, knownTarget: false };
  const { readings } = simulateFleet({ ...plan, second: { noise: 0.2, offset: 0.3, analyzerSd: 0.2 } });
  // Every unit's first visit falls into one month, its second into the next, and so on.
  const { unit, day } = readings;
  const isNew = (row: number): boolean => unit[row] !== unit[row - 1] || day[row] !== day[row - 1];
  const zoneMonth = unit.map((own, row) => {
    let visits = 0;
    for (let i = row; i >= 0 && unit[i] === own; i--) if (isNew(i)) visits++;
    return visits - 1;
  });
  const zoned = zone > 0 ? { zoneMonth, zoneMonths: 6 } : {};
  const aimless = { ...readings, zoneMonths: 0, aim: readings.aim.map(() => Number.NaN), ...zoned };
  const spread: Spread = { ...DRIFT_PRIOR.typical, rateWander: 1e-9, zone };
  const written = new ProgramWriter(aimless).write();
  const { program } = written;
  const effects = solveShared(sumEquations(program, spread), program.shared, spread, DRIFT_PRIOR);
  const states = fitLanes(program, spread, effects);
  const dense = writeOut(program, spread);
  const n = dense.priors.length;
  const design = filled(dense.design, n);
  const weighted = design.transpose().mmul(Matrix.diag(dense.noise.map((variance) => 1 / variance)));
  const posterior = inverse(Matrix.add(weighted.mmul(design), Matrix.diag(dense.priors.map((v) => 1 / v))));
  const mean = posterior.mmul(weighted.mmul(Matrix.columnVector(dense.y)));
  const told = (rows: number[][]): { means: number[]; variances: number[] } => {
    const pick = filled(rows, n);
    return {
      means: pick.mmul(mean).to1DArray(),
      variances: pick.mmul(posterior).mmul(pick.transpose()).diag(),
    };
  };

  test('levels and rates, and their variances', () => {
    const levels = told(dense.levelNow);
    const rates = told(dense.rateNow);
    levels.means.forEach((value, lane) => {
      expect(states.level[lane]).toBeCloseTo(value, 3);
      expect(states.levelVariance[lane]).toBeCloseTo(levels.variances[lane], 4);
      expect(states.rate[lane]).toBeCloseTo(rates.means[lane], 3);
      expect(states.rateVariance[lane]).toBeCloseTo(rates.variances[lane], 4);
    });
  });

  test('biases and the offset between the cells', () => {
    const { analyzers, secondAnalyzers, classes } = program.shared;
    for (let i = 0; i < analyzers + secondAnalyzers; i++) expect(effects.values[i]).toBeCloseTo(mean.get(i, 0), 3);
    const offset = analyzers + secondAnalyzers + classes;
    expect(effects.values[offset]).toBeCloseTo(mean.get(offset, 0), 3);
    expect(effects.covariance[0]).toBeCloseTo(posterior.get(0, 0), 4);
    const { zoneMonths } = program.shared;
    expect(zoneMonths > 0).toBe(zone > 0);
    for (let i = offset + 1; i < offset + 1 + zoneMonths; i++) expect(effects.values[i]).toBeCloseTo(mean.get(i, 0), 3);
  });

  test('the smoothed path ends where the filter stands', () => {
    const trace = traceLanes(written, spread, effects);
    for (let lane = 0; lane < states.level.length; lane++) {
      const last = trace.starts[lane + 1] - 1;
      expect(trace.lane[last]).toBe(lane);
      expect(trace.level[last]).toBeCloseTo(states.level[lane], 8);
      expect(trace.sd[last] ** 2).toBeCloseTo(states.levelVariance[lane], 8);
    }
  });
});
