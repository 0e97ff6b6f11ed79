import { describe, expect, test } from 'vitest';
import { bendShares } from '../../../shared/foresight/bend-shares.ts';
import { askBends } from '../../../shared/foresight/bent-lanes.ts';
import { fitModel } from '../../../shared/foresight/fit-model.ts';
import { STEP } from '../../../shared/foresight/fleet-program.ts';
import { insertBends } from '../../../shared/foresight/insert-bends.ts';
import { criterionOf, solveShared, sumEquations } from '../../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR } from '../../../shared/foresight/spread.ts';
import { ProgramWriter } from '../../../shared/foresight/write-program.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';

const plan = { ...PLAIN_FLEET, units: 40, reading: 0.08, visit: 0.05, analyzerSd: 0.05, wander: 0.1 };

describe('rates that change on the way', () => {
  test('the evidence is the ratio of the likelihoods with the bend among the steps and without', () => {
    const written = new ProgramWriter(simulateFleet({ ...plan, units: 1, analyzers: 1 }).readings).write();
    const { program } = written;
    // Next to nothing is left open in what the fleet shares, so that its values given are its values.
    const spread = { ...DRIFT_PRIOR.typical, analyzer: 1e-7, classRate: 1e-7 };
    const prior = { ...DRIFT_PRIOR, fleetRate: 1e-7, aims: [1e-7, 1e-7] as const };
    const likelihood = (of: typeof program): number =>
      -0.5 * criterionOf(sumEquations(of, spread), of.shared, spread, prior);
    const effects = solveShared(sumEquations(program, spread), program.shared, spread, prior);
    const bends = askBends(program, spread, effects, 0.6);
    const visits = [...written.stepDay.keys()].filter((step) => program.kind[step] === STEP.visit);
    const each = visits.slice(2).map((step) => {
      const bent = insertBends(written, [{ step, lane: 0, size: 0.6 }]).program;
      return Math.exp(likelihood(bent) - likelihood(program));
    });
    const mean = each.reduce((sum, ratio) => sum + ratio, 0) / each.length;
    expect(bends.bent[0]).toBeCloseTo(Math.log(mean), 6);
    expect(bends.step[0]).toBe(visits.slice(2)[each.indexOf(Math.max(...each))]);
    expect(bends.stepBefore[0]).toBe(visits[visits.indexOf(bends.step[0]) - 1]);
    const apart = insertBends(written, [{ step: visits[0], lane: 0, size: 0.6 }]).program;
    expect(bends.apart[0]).toBeCloseTo(likelihood(apart) - likelihood(program), 6);
  });

  test('shares and chances of a mixture whose terms are plain to see', () => {
    const lanes = (values: number[]): Float64Array => Float64Array.from(values);
    const nothing = lanes([]);
    const bends = {
      apart: lanes([0, 0, 0, 0]),
      bent: lanes([40, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NaN]),
      ...{ step: new Int32Array(4), stepBefore: new Int32Array(4) },
      ...{ level: nothing, rate: nothing, levelVariance: nothing, rateVariance: nothing, covariance: nothing },
    };
    const shares = bendShares(bends);
    // One lane of three surely, the fourth not asked: ln of (1/3) e^40 · (2/3)².
    expect(shares.bent).toBeCloseTo(1 / 3, 6);
    expect(shares.gain).toBeCloseTo(40 + Math.log((1 / 3) * (2 / 3) ** 2), 6);
    expect([...shares.chance].map((chance) => Math.round(chance * 1e6) / 1e6)).toEqual([1, 0, 0, 0]);
  });

  test('a fleet of constant rates is not asked for more, and says that nothing began', () => {
    const { began } = fitModel(simulateFleet(plan).readings, { prior: DRIFT_PRIOR, sample: 400, seed: 1 });
    expect(began.every(Number.isNaN)).toBe(true);
  });
});
