import { expect, test } from 'vitest';
import { askBends } from '../../../shared/foresight/bent-lanes.ts';
import { fitLanes } from '../../../shared/foresight/fit-fleet.ts';
import {
  askBendPasses,
  fitLanePasses,
  passesOver,
  sumPasses,
  tracePasses,
} from '../../../shared/foresight/fleet-passes.ts';
import { solveShared, sumEquations } from '../../../shared/foresight/shared-effects.ts';
import { DRIFT_PRIOR } from '../../../shared/foresight/spread.ts';
import { traceLanes } from '../../../shared/foresight/trace-lanes.ts';
import { ProgramWriter } from '../../../shared/foresight/write-program.ts';
import { atOnce } from '../../../shared/pieces.ts';
import { fingerprint } from '../../../src/engine/fingerprint.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';

/** More units than two shards hold. */
const { readings } = simulateFleet({ ...PLAIN_FLEET, units: 1100, visits: 4, analyzers: 6, classes: 2 });
const written = new ProgramWriter(readings).write();
const passes = passesOver(written);
const spread = DRIFT_PRIOR.typical;

test('passes a shard at a time are the passes over the whole fleet', () => {
  expect(passes.shards).toHaveLength(3);
  const whole = sumEquations(written.program, spread);
  const summed = atOnce(sumPasses(passes, spread));
  expect(summed.counted).toBe(whole.counted);
  // Sums of a thousand terms, added in another order: the last digits of sixteen.
  const apart = summed.matrix.map(
    (value, i) => Math.abs(value - whole.matrix[i]) / Math.max(1, Math.abs(whole.matrix[i])),
  );
  expect(Math.max(...apart)).toBeLessThanOrEqual(1e-9);
  const effects = solveShared(whole, written.program.shared, spread, DRIFT_PRIOR);
  expect(fingerprint(atOnce(fitLanePasses(passes, spread, effects)))).toBe(
    fingerprint(fitLanes(written.program, spread, effects)),
  );
  expect(fingerprint(atOnce(askBendPasses(passes, spread, effects, 0.6)))).toBe(
    fingerprint(askBends(written.program, spread, effects, 0.6)),
  );
  expect(fingerprint(atOnce(tracePasses(passes, spread, effects)))).toBe(
    fingerprint(traceLanes(written, spread, effects)),
  );
});
