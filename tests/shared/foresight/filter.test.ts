import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { fitLanes } from '../../../shared/foresight/fit-fleet.ts';
import { columnsBeforeZones, columnsOf, type FleetProgram, STEP } from '../../../shared/foresight/fleet-program.ts';
import { type Bend, insertBends } from '../../../shared/foresight/insert-bends.ts';
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
  /** What is known of a level for certain: the part of it that readings at the aim and the aim itself are. */
  readonly levelKnown: number[];
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
            : i < analyzers + secondAnalyzers + classes + program.shared.offsets
              ? DRIFT_PRIOR.offset
              : i < columnsBeforeZones(program.shared)
                ? DRIFT_PRIOR.aims[(i - (analyzers + secondAnalyzers + classes + program.shared.offsets)) % 2]
                : spread.zone;
    priors.push(sd * sd);
  }
  const fleetRate = priors.push(DRIFT_PRIOR.fleetRate ** 2) - 1;
  const design: number[][] = [];
  const y: number[] = [];
  const noise: number[] = [];
  const levelNow: number[][] = [];
  const rateNow: number[][] = [];
  const levelKnown: number[] = [];
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
    const known = new Array<number>(lanes).fill(0);
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
      } else if (kind === STEP.bend) {
        add(rate[lane], priors.push(value ** 2) - 1);
      } else if (kind === STEP.widen) {
        add(level[lane], priors.push(spread.unrecorded ** 2 + program.extra[step]) - 1);
      } else if (kind === STEP.aim || (kind === STEP.left && !Number.isNaN(program.extra[step]))) {
        const set = settingOf(program, step, spread);
        level[lane] = plus([], level[lane], kind === STEP.aim ? set.keep : 0);
        known[lane] = (kind === STEP.aim ? set.keep * known[lane] : 0) + set.known;
        level[lane] = plus(level[lane], visit, -set.instrument);
        if (program.biasColumn[step] >= 0) add(level[lane], columnOf(program.biasColumn[step]), -set.instrument);
        if (program.offsetColumn[step] >= 0) add(level[lane], columnOf(program.offsetColumn[step]), -set.offset);
        add(level[lane], priors.push(set.variance) - 1);
      } else {
        if (kind !== STEP.read) {
          known[lane] = 0;
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
        y.push(value - known[lane]);
        noise.push((program.cell[step] === 0 ? spread.reading : spread.secondReading) ** 2);
      }
    }
    levelNow.push(...level);
    rateNow.push(...rate);
    levelKnown.push(...known);
  }
  return { design, y, noise, priors, levelNow, rateNow, levelKnown };
}

interface Setting {
  readonly keep: number;
  readonly known: number;
  readonly instrument: number;
  readonly offset: number;
  readonly variance: number;
}

/**
 * A level x that is set at a visit of effect v by an instrument of bias b to an aim a, off by what crews leave (o): of what
 * instrument and visit add, the share `byDisplay` (g) goes into the setting. After an as-left reading y of which the share s
 * is believed, x = s (y − v − b) + (1 − s)(a − o − g (v + b)) + noise; without one, x moves to a − o − g (v + b) but for the
 * share that stays.
 */
function settingOf(program: FleetProgram, step: number, spread: Spread): Setting {
  const { left, leftShare: s, byDisplay: g, kept } = spread;
  const value = program.value[step];
  if (program.kind[step] === STEP.left) {
    const known = s * value + (1 - s) * program.extra[step];
    return { keep: 0, known, instrument: s + (1 - s) * g, offset: 1 - s, variance: left ** 2 };
  }
  const keep = program.extra[step] === 1 ? 0 : kept;
  const moved = 1 - keep;
  return { keep, known: moved * value, instrument: moved * g, offset: moved, variance: moved * 2 * left ** 2 };
}

const sumOf = (a: readonly number[], b: readonly number[]): number[] =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => (a[i] ?? 0) + (b[i] ?? 0));

/** A change of a lane's rate before its unit's fourth visit. */
function bendAt({ unitLanes, unitSteps, kind }: FleetProgram, of: number): Bend {
  const unit = unitLanes.findLastIndex((first) => first <= of);
  const visits = [...kind.keys()].filter((step) => step >= unitSteps[unit] && kind[step] === STEP.visit);
  return { step: visits[3], lane: of - unitLanes[unit], size: 0.6 };
}

/** Whether a lane's last step moves it with no reading after. */
function isMovedAfter({ unitLanes, unitSteps, kind, lane }: FleetProgram, of: number): boolean {
  const unit = unitLanes.findLastIndex((first) => first <= of);
  for (let step = unitSteps[unit + 1] - 1; step >= unitSteps[unit]; step--)
    if (kind[step] !== STEP.visit && lane[step] === of - unitLanes[unit]) return kind[step] === STEP.aim;
  return false;
}

const filled = (rows: number[][], columns: number): Matrix =>
  new Matrix(rows.map((row) => Array.from({ length: columns }, (_, i) => row[i] ?? 0)));

describe.each([
  ['alone', 0, 'none', []],
  ['with the months of a gas zone', 0.2, 'none', []],
  ['set to aims', 0, 'left', []],
  ['set to aims, nothing read as left', 0, 'found', []],
  ['with rates that change', 0, 'left', [0, 3, 4]],
] as const)('the filter against the same model written out densely, %s', (_, zone, aims, bent) => {
  const plan = { ...PLAIN_FLEET, units: 4, visits: 6, classes: 2, analyzers: 3, knownTarget: false };
  const aimed = { knownTarget: aims !== 'none', recordLeft: aims !== 'found' };
  const { readings } = simulateFleet({ ...plan, ...aimed, second: { noise: 0.2, offset: 0.3, analyzerSd: 0.2 } });
  // Every unit's first visit falls into one month, its second into the next, and so on.
  const { unit, day } = readings;
  const isNew = (row: number): boolean => unit[row] !== unit[row - 1] || day[row] !== day[row - 1];
  const zoneMonth = unit.map((own, row) => {
    let visits = 0;
    for (let i = row; i >= 0 && unit[i] === own; i--) if (isNew(i)) visits++;
    return visits - 1;
  });
  const zoned = zone > 0 ? { zoneMonth, zoneMonths: 6 } : {};
  const aim = aims === 'none' ? readings.aim.map(() => Number.NaN) : readings.aim;
  const fleet = { ...readings, zoneMonths: 0, aim, ...zoned };
  // What a setting's own noise shares with the second cell is not written out here.
  const settling = aims === 'none' ? DRIFT_PRIOR.typical.settling : 0;
  const spread: Spread = { ...DRIFT_PRIOR.typical, rateWander: 1e-9, zone, settling };
  const plainly = new ProgramWriter(fleet).write();
  const written = {
    ...plainly,
    ...insertBends(
      plainly,
      bent.map((lane) => bendAt(plainly.program, lane)),
    ),
  };
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
      expect(states.level[lane]).toBeCloseTo(value + dense.levelKnown[lane], 3);
      expect(states.levelVariance[lane]).toBeCloseTo(levels.variances[lane], 4);
      expect(states.rate[lane]).toBeCloseTo(rates.means[lane], 3);
      expect(states.rateVariance[lane]).toBeCloseTo(rates.variances[lane], 4);
    });
  });

  test('levels as the second cell reads them: the offset added, with what it shares with level and rate', () => {
    const { analyzers, secondAnalyzers, classes } = program.shared;
    const shown = dense.levelNow.map((row) => {
      const added = row.slice();
      added[analyzers + secondAnalyzers + classes] = (added[analyzers + secondAnalyzers + classes] ?? 0) + 1;
      return added;
    });
    const variances = told(shown).variances;
    const withRate = told(shown.map((row, lane) => sumOf(row, dense.rateNow[lane]))).variances;
    const rates = told(dense.rateNow).variances;
    variances.forEach((variance, lane) => {
      expect(states.levelVariance[lane] + states.offsetVariance[lane]).toBeCloseTo(variance, 4);
      const both = (withRate[lane] - variance - rates[lane]) / 2;
      expect(states.covariance[lane] + states.offsetCovariance[lane]).toBeCloseTo(both, 4);
    });
  });

  test('biases and the offset between the cells', () => {
    const { analyzers, secondAnalyzers, classes } = program.shared;
    for (let i = 0; i < analyzers + secondAnalyzers; i++) expect(effects.values[i]).toBeCloseTo(mean.get(i, 0), 3);
    const offset = analyzers + secondAnalyzers + classes;
    expect(effects.values[offset]).toBeCloseTo(mean.get(offset, 0), 3);
    expect(effects.covariance[0]).toBeCloseTo(posterior.get(0, 0), 4);
    const { zoneMonths } = program.shared;
    const zones = columnsBeforeZones(program.shared);
    expect(zoneMonths > 0).toBe(zone > 0);
    for (let i = zones; i < zones + zoneMonths; i++) expect(effects.values[i]).toBeCloseTo(mean.get(i, 0), 3);
  });

  test('the smoothed path ends where the filter stands', () => {
    const trace = traceLanes(written, spread, effects);
    for (let lane = 0; lane < states.level.length; lane++) {
      if (isMovedAfter(program, lane)) continue;
      const last = trace.starts[lane + 1] - 1;
      expect(trace.lane[last]).toBe(lane);
      expect(trace.level[last]).toBeCloseTo(states.level[lane], 8);
      expect(trace.sd[last] ** 2).toBeCloseTo(states.levelVariance[lane], 8);
    }
  });
});
