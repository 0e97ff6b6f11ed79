import { describe, expect, test } from 'vitest';
import { fitLanes } from '../../shared/foresight/fit-fleet.ts';
import { columnsOf, type FleetProgram, STEP } from '../../shared/foresight/fleet-program.ts';
import { type FleetReadings, READING_STATE } from '../../shared/foresight/fleet-readings.ts';
import {
  criterionOf,
  type SharedEffects,
  type SharedEquations,
  solveShared,
  sumEquations,
} from '../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR, type Spread, type SpreadPrior } from '../../shared/foresight/spread.ts';
import { StepList } from '../../shared/foresight/step-list.ts';
import { ProgramWriter } from '../../shared/foresight/write-program.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { minimize } from '../../shared/statistics/minimize.ts';
import { SLEEP_REACTION } from './reference/sleep-reaction.ts';
import r from './reference/statistics-r.json';

/**
 * Random intercepts and slopes are what the fleet's own filter fits when nothing wanders, nobody adjusts and no visit or
 * analyzer adds anything: a subject is a unit of one lane, its slope the lane's rate, the mean slope the class's.
 */
interface Subjects {
  /** One row a subject. */
  readonly y: readonly (readonly number[])[];
  readonly time: readonly number[];
}

const table = r as unknown as Record<string, number[]>;
const SLEEP: Subjects = { y: SLEEP_REACTION, time: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] };
const AGES = [8, 10, 12, 14];
const SETS: Readonly<Record<string, Subjects>> = { sleep: SLEEP, orthodont: { y: orthodont(), time: AGES } };

function orthodont(): number[][] {
  const { orthodont_distance: distance, orthodont_subject: subject } = r;
  const rows: number[][] = [];
  distance.forEach((value, i) => {
    rows[subject[i] - 1] = [...(rows[subject[i] - 1] ?? []), value];
  });
  return rows;
}

/** So wide that what is believed beforehand does not show in the ninth digit. */
const WIDE = 1e7;
const prior: SpreadPrior = { ...DRIFT_PRIOR, fleetRate: WIDE, offset: WIDE };
const still: Spread = {
  ...DRIFT_PRIOR.typical,
  ...{ settling: 0, visit: 0, wander: 0, rateWander: 0, analyzer: 0, air: 0, zone: 0, classRate: 1 },
};

/**
 * Steps of subjects whose intercept is drawn about a common one: at the time `apart` from the first reading, at which
 * intercept and slope are not correlated, a level is set to N(−offset, secondReading²).
 */
function drawnIntercepts({ y, time }: Subjects, apart: number): FleetProgram {
  const steps = new StepList();
  const starts = [0];
  for (const readings of y) {
    steps.add(STEP.renew, 0);
    steps.add(STEP.set, 0, 0, 0, 1, -1, 1);
    readings.forEach((reading, i) => {
      steps.add(STEP.visit, 0, i === 0 ? time[0] - apart : time[i] - time[i - 1], 0, 0);
      steps.add(STEP.read, 0, reading, 0, 0);
    });
    starts.push(steps.length);
  }
  const units = y.length;
  return {
    units,
    unitSteps: Int32Array.from(starts),
    unitLanes: Int32Array.from({ length: units + 1 }, (_, unit) => unit),
    unitColumns: Int32Array.from({ length: units + 1 }, (_, unit) => 2 * unit),
    columns: Int32Array.from({ length: 2 * units }, (_, place) => place % 2),
    laneClass: new Int32Array(units),
    laneOffset: new Int32Array(units).fill(-1),
    ...steps.columns(),
    shared: { analyzers: 0, secondAnalyzers: 0, laterAnalyzers: 0, classes: 1, offsets: 1, aims: 0, zoneMonths: 0 },
  };
}

/** −2 log of the restricted likelihood as others print it: without the proper priors of the `fixed` effects. */
const withoutPrior = (criterion: number, fixed: number): number =>
  criterion - Math.log(1 + WIDE ** 2) - (fixed - 1) * Math.log(WIDE ** 2) - fixed * Math.log(2 * Math.PI);

/** −2 log of the likelihood: the restricted one's without the determinant of the two fixed effects' precision. */
function likelihood(effects: SharedEffects): number {
  const [a, b, , d] = effects.covariance;
  const determinant = a * d - b * b;
  return withoutPrior(effects.criterion, 2) + Math.log(determinant) + 2 * Math.log(2 * Math.PI);
}

const FINE = { maxSteps: 200, difference: 1e-5, tolerance: 1e-6, longestStep: 0.5 };
const FINER = { maxSteps: 50, difference: 1e-4, tolerance: 1e-8, longestStep: 0.1 };

interface Told {
  readonly criterion: number;
  readonly fixed: readonly number[];
  readonly errors: readonly number[];
  readonly sds: readonly number[];
  readonly correlation: number;
  readonly residual: number;
  /** Intercept and slope of each subject less the fixed ones. */
  readonly random: readonly number[];
}

function fitDrawn(subjects: Subjects, method: 'REML' | 'ML'): Told {
  const at = (line: ArrayLike<number>): { program: FleetProgram; spread: Spread; effects: SharedEffects } => {
    const program = drawnIntercepts(subjects, line[3]);
    const [secondReading, rate, reading] = [0, 1, 2].map((i) => Math.exp(line[i]));
    const spread = { ...still, secondReading, rate, reading };
    const equations: SharedEquations = sumEquations(program, spread);
    return { program, spread, effects: solveShared(equations, program.shared, spread, prior) };
  };
  const criterion = (line: ArrayLike<number>): number => {
    const { effects } = at(line);
    return method === 'REML' ? withoutPrior(effects.criterion, 2) : likelihood(effects);
  };
  const sd = deviation(subjects.y.flat());
  const start = [Math.log(sd / 2), Math.log(sd / 10), Math.log(sd / 2), 0];
  const line = minimize(criterion, minimize(criterion, start, FINE).at, FINER).at;
  const { program, spread, effects } = at(line);
  const apart = line[3];
  const { secondReading, rate, reading } = spread;
  const [slope, offset] = effects.values;
  const [ofSlope, both, , ofOffset] = effects.covariance;
  const intercept = -offset - slope * apart;
  const states = fitLanes(program, spread, effects);
  const last = subjects.time[subjects.time.length - 1];
  const interceptSd = Math.sqrt(secondReading ** 2 + (apart * rate) ** 2);
  return {
    criterion: criterion(line),
    fixed: [intercept, slope],
    errors: [Math.sqrt(ofOffset + apart ** 2 * ofSlope + 2 * apart * both), Math.sqrt(ofSlope)],
    sds: [interceptSd, rate],
    correlation: (-apart * rate) / interceptSd,
    residual: reading,
    random: subjects.y.flatMap((_, i) => [states.level[i] - states.rate[i] * last - intercept, states.rate[i] - slope]),
  };
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

const near = (found: number, expected: number, relative: number): void =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(relative);

/** Made with R's lme4 and nlme (reference/statistics.R; versions and date inside the file): seen. */
describe('random intercepts and slopes in the fleet’s filter, against lme4', () => {
  test.each([
    ['sleep', 'REML'],
    ['sleep', 'ML'],
    ['orthodont', 'REML'],
    ['orthodont', 'ML'],
  ] as const)('%s, %s', (name, method) => {
    const told = fitDrawn(SETS[name], method);
    const key = `${name}_${method.toLowerCase()}`;
    expect(told.criterion).toBeCloseTo(table[`${key}_criterion`][0], 6);
    told.fixed.forEach((value, i) => {
      expect(value).toBeCloseTo(table[`${key}_fixed`][i], 6);
      near(told.errors[i], table[`${key}_se`][i], 1e-5);
    });
    const [intercept, slope, correlation, residual] = table[`${key}_sd`];
    // The criterion is flat at its minimum: 1e-8 in it is 1e-4 of a standard deviation, relative.
    near(told.sds[0], intercept, 2e-5);
    near(told.sds[1], slope, 2e-5);
    expect(told.correlation).toBeCloseTo(correlation, 4);
    near(told.residual, residual, 1e-5);
    told.random.forEach((value, i) => {
      expect(value).toBeCloseTo(table[`${key}_random`][i], 3);
    });
  });

  test('the published figures of sleepstudy (lme4’s documentation, seen): all printed digits', () => {
    const reml = fitDrawn(SLEEP, 'REML');
    expect(reml.criterion.toFixed(6)).toBe('1743.628272');
    expect(reml.fixed.map((value) => value.toFixed(6))).toEqual(['251.405105', '10.467286']);
    expect(reml.errors.map((value) => value.toFixed(3))).toEqual(['6.825', '1.546']);
    expect(reml.sds.map((value) => value.toFixed(3))).toEqual(['24.740', '5.922']);
    expect(reml.correlation.toFixed(3)).toBe('0.066');
    expect(reml.residual.toFixed(3)).toBe('25.592');
    const ml = fitDrawn(SLEEP, 'ML');
    expect(ml.criterion.toFixed(6)).toBe('1751.939344');
    expect(ml.errors.map((value) => value.toFixed(3))).toEqual(['6.632', '1.502']);
    // Of the intercept's deviation the fourth decimal is a matter of where a search ends: the criterion is flat.
    expect(ml.sds[0]).toBeCloseTo(23.7805, 3);
    expect(ml.sds[1].toFixed(4)).toBe('5.7168');
    expect(ml.correlation.toFixed(4)).toBe('0.0813');
  });

  test('Orthodont as nlme prints it: all digits on which its two releases here and in its documentation agree', () => {
    const { criterion, fixed, errors, sds, correlation, residual } = fitDrawn(SETS['orthodont'], 'REML');
    // logLik −221.3183 (from memory too: nlme's documentation, Pinheiro and Bates 2000).
    expect((-criterion / 2).toFixed(4)).toBe('-221.3183');
    expect(fixed.map((value) => value.toFixed(6))).toEqual(['16.761111', '0.660185']);
    expect(errors[1].toFixed(7)).toBe(r.orthodont_nlme[4].toFixed(7));
    expect([errors[0], ...sds, residual].map((value) => value.toPrecision(5))).toEqual(
      [3, 5, 6, 7].map((place) => r.orthodont_nlme[place].toPrecision(5)),
    );
    expect(correlation.toFixed(3)).toBe('-0.609');
  });
});

/** The readings of subjects as a fleet's, so that the notebook's own writer makes the steps: levels of which nothing is believed. */
function asReadings({ y, time }: Subjects): FleetReadings {
  const rows = y.length * time.length;
  const unit = Int32Array.from({ length: rows }, (_, row) => Math.floor(row / time.length));
  const units = Int32Array.from(y, (_, i) => i);
  const none = (): Float64Array => new Float64Array(rows).fill(Number.NaN);
  return {
    rows,
    unit,
    lane: unit,
    day: Float64Array.from(unit, (_, row) => time[row % time.length] * DAYS_PER_YEAR),
    state: new Uint8Array(rows).fill(READING_STATE.found),
    adjusted: new Int8Array(rows),
    visit: new Int32Array(rows).fill(-1),
    analyzer: new Int32Array(rows).fill(-1),
    first: Float64Array.from(y.flat()),
    second: none(),
    extra: new Float64Array(rows),
    aim: none(),
    tolerance: none(),
    zoneMonth: new Int32Array(rows).fill(-1),
    zoneMonths: 0,
    lanes: {
      count: y.length,
      unit: units,
      classOf: new Int32Array(y.length),
      fuel: new Int32Array(y.length),
      aimInCo2: new Uint8Array(y.length),
    },
    units: y.length,
    analyzers: 0,
    laterAnalyzers: 0,
    classes: 1,
    fuels: 0,
    breaks: y.map(() => []),
  };
}

describe('the same readings through the notebook’s own steps: own levels, slopes about their mean, by REML against lme4', () => {
  test.each(['sleep', 'orthodont'])('%s', (name) => {
    const subjects = SETS[name];
    const { program } = new ProgramWriter(asReadings(subjects)).write();
    expect(columnsOf(program.shared)).toBe(1);
    const spreadAt = (line: ArrayLike<number>): Spread => ({
      ...still,
      rate: Math.exp(line[0]),
      reading: Math.exp(line[1]),
    });
    const criterion = (line: ArrayLike<number>): number => {
      const spread = spreadAt(line);
      return withoutPrior(criterionOf(sumEquations(program, spread), program.shared, spread, prior), 1);
    };
    const sd = deviation(subjects.y.flat());
    const start = [Math.log(sd / 10), Math.log(sd / 2)];
    const line = minimize(criterion, minimize(criterion, start, FINE).at, FINER).at;
    const spread = spreadAt(line);
    const key = `${name}_levels`;
    expect(criterion(line)).toBeCloseTo(table[`${key}_criterion`][0], 6);
    near(spread.rate, table[`${key}_sd`][0], 1e-5);
    near(spread.reading, table[`${key}_sd`][1], 1e-5);
    const effects = solveShared(sumEquations(program, spread), program.shared, spread, prior);
    const fixed = table[`${key}_fixed`];
    const slope = fixed[fixed.length - 1];
    expect(effects.values[0]).toBeCloseTo(slope, 6);
    near(Math.sqrt(effects.covariance[0]), table[`${key}_se`][fixed.length - 1], 1e-5);
    const states = fitLanes(program, spread, effects);
    const last = subjects.time[subjects.time.length - 1];
    table[`${key}_random`].forEach((value, i) => {
      expect(states.rate[i] - slope).toBeCloseTo(value, 4);
      expect(states.level[i] - last * states.rate[i]).toBeCloseTo(fixed[i], 3);
    });
  });
});
