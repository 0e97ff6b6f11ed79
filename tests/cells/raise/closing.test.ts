import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closedBy } from '../../../cells/raise/findings/closing.ts';
import type { FleetReadings } from '../../../cells/raise/fleet.ts';

/** The rule for one pair, word for word. */
function later(a: { day: number; stage: number }, b: { day: number; stage: number }): boolean {
  const [on, other] = [Math.floor(a.day), Math.floor(b.day)];
  if (on !== other) return on > other;
  const bothTimed = a.day !== on && b.day !== other;
  return bothTimed && a.day !== b.day ? a.day > b.day : a.stage > b.stage;
}

test('one pass over the closers says the same as every pair', () => {
  const reading = fc.record({
    day: fc.tuple(fc.integer({ min: 0, max: 2 }), fc.constantFrom(0, 0, 0.25, 0.5)).map(([day, time]) => day + time),
    stage: fc.integer({ min: 0, max: 2 }),
  });
  fc.assert(
    fc.property(reading, fc.array(reading, { maxLength: 6 }), (open, closers) => {
      const all = [open, ...closers];
      const readings = {
        day: Float64Array.from(all, ({ day }) => day),
        stage: Int8Array.from(all, ({ stage }) => stage),
      } as unknown as FleetReadings;
      const isClosed = closedBy(
        readings,
        closers.map((_, i) => i + 1),
      );
      expect(isClosed(0)).toBe(closers.some((closer) => later(closer, open)));
    }),
    { seed: 3, numRuns: 2000 },
  );
});
