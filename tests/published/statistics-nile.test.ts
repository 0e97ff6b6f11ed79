import { describe, expect, test } from 'vitest';
import type { FleetProgram } from '../../shared/foresight/fleet-program.ts';
import { type FleetReadings, READING_STATE } from '../../shared/foresight/fleet-readings.ts';
import { criterionOf, solveShared, sumEquations } from '../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR, type Spread, type SpreadPrior } from '../../shared/foresight/spread.ts';
import { traceLanes } from '../../shared/foresight/trace-lanes.ts';
import { ProgramWriter } from '../../shared/foresight/write-program.ts';
import { DAYS_PER_YEAR } from '../../shared/quantities/dates.ts';
import { minimize } from '../../shared/statistics/minimize.ts';
import r from './reference/statistics-r.json';

/** A local level is a fleet of one lane that is never adjusted and has no rate, no visit effect and no analyzer. */
const NOTHING = 1e-6;
const prior: SpreadPrior = { ...DRIFT_PRIOR, fleetRate: NOTHING };

function nile(): FleetReadings {
  const rows = r.nile.length;
  return {
    rows,
    unit: new Int32Array(rows),
    lane: new Int32Array(rows),
    day: Float64Array.from(r.nile, (_, i) => i * DAYS_PER_YEAR),
    state: new Uint8Array(rows).fill(READING_STATE.found),
    adjusted: new Int8Array(rows),
    visit: new Int32Array(rows).fill(-1),
    analyzer: new Int32Array(rows).fill(-1),
    first: Float64Array.from(r.nile),
    second: new Float64Array(rows).fill(Number.NaN),
    extra: new Float64Array(rows),
    aim: new Float64Array(rows).fill(Number.NaN),
    tolerance: new Float64Array(rows).fill(Number.NaN),
    zoneMonth: new Int32Array(rows).fill(-1),
    zoneMonths: 0,
    lanes: {
      count: 1,
      unit: new Int32Array(1),
      classOf: new Int32Array(1),
      fuel: new Int32Array(1),
      aimInCo2: new Uint8Array(1),
    },
    units: 1,
    analyzers: 0,
    laterAnalyzers: 0,
    classes: 1,
    fuels: 0,
    breaks: [[]],
  };
}

const spreadOf = (reading: number, wander: number): Spread => ({
  ...DRIFT_PRIOR.typical,
  reading,
  wander,
  visit: NOTHING,
  settling: 0,
  rate: NOTHING,
  rateWander: NOTHING,
  analyzer: NOTHING,
  classRate: NOTHING,
});

function variances(program: FleetProgram): number[] {
  const criterion = (logs: Float64Array): number => {
    const spread = spreadOf(Math.exp(logs[0]), Math.exp(logs[1]));
    return 0.5 * criterionOf(sumEquations(program, spread), program.shared, spread, prior);
  };
  const found = minimize(criterion, [Math.log(100), Math.log(50)], { difference: 1e-4, tolerance: 1e-5 });
  return [...found.at].map((log) => Math.exp(2 * log));
}

describe('flow of the Nile 1871-1970, local level model', () => {
  const written = new ProgramWriter(nile()).write();

  test('variances as R’s StructTS and as Durbin and Koopman (2nd ed., 2.2.5; from memory: 15099 and 1469.1)', () => {
    const [reading, wander] = variances(written.program);
    // R stops at 1e-7 of a criterion that is flat: 1 part in 2000 of a variance.
    expect(Math.abs(reading / r.nile_variances[1] - 1)).toBeLessThan(5e-4);
    expect(Math.abs(wander / r.nile_variances[0] - 1)).toBeLessThan(1e-3);
    expect(Math.round(reading)).toBe(15099);
    expect(wander.toFixed(0)).toBe('1469');
  });

  test('smoothed levels and their variances as R’s KalmanSmooth', () => {
    const spread = spreadOf(Math.sqrt(15099), Math.sqrt(1469.1));
    const effects = solveShared(sumEquations(written.program, spread), written.program.shared, spread, prior);
    const trace = traceLanes(written, spread, effects);
    r.nile_smooth.forEach((level, i) => {
      expect(trace.level[i]).toBeCloseTo(level, 2);
      expect(Math.abs(trace.sd[i] ** 2 / r.nile_smooth_variance[i] - 1)).toBeLessThan(1e-4);
    });
  });
});
