import { describe, expect, test } from 'vitest';
import { fittingAnalyzers } from '../../../shared/foresight/fit-analyzers.ts';
import { type InstrumentRow, judgeInstruments } from '../../../shared/foresight/judge-instruments.ts';
import { tableOfAnalyzers } from '../../../shared/foresight/table-of-analyzers.ts';
import { tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { atOnce } from '../../../shared/pieces.ts';
import { readingsSchema } from '../../../shared/schemas/readings.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';

/** Four analyzers; all found readings of some, the first where left out, are shifted; the given rule says who reads which unit. */
function judged(
  shift: (day: number) => number,
  pick: (unit: number, analyzer: number) => number,
  isShifted: (analyzer: number) => boolean = (code) => code === 0,
): readonly InstrumentRow[] {
  const { readings } = simulateFleet({ ...PLAIN_FLEET, units: 40, analyzers: 4, analyzerSd: 0.03, seed: 7 });
  const analyzer = readings.analyzer.map((code, row) => pick(readings.unit[row], code));
  const first = readings.first.map((value, row) =>
    readings.state[row] === 0 && isShifted(analyzer[row]) ? value + shift(readings.day[row]) : value,
  );
  const fleet = { ...readings, analyzer, first };
  const names = ['A', 'B', 'C', 'D'];
  const read = {
    fleet,
    sourceRow: new Int32Array(0),
    lanes: [],
    analyzers: names,
    fuels: [],
    co2max: Float64Array.of(11.85),
    zoneMonths: [],
  };
  const table = tableOfRecords(
    readingsSchema,
    [...analyzer].map((code) => ({ unit: 'U', analyzer: names[code] })),
  );
  const found = atOnce(fittingAnalyzers(read, { sample: 400, seed: 1 }));
  return judgeInstruments(table, tableOfAnalyzers(found.read, found.fit, found.intervals), 0.15);
}

function verdicts(shift: number, pick: (unit: number, analyzer: number) => number): Map<string, string> {
  return new Map(judged(() => shift, pick).map((row) => [row.analyzer, row.verdict]));
}

describe('instruments', () => {
  test('one analyzer that reads high is found, the others stand within', () => {
    const found = verdicts(0.5, (_, code) => code);
    expect(found.get('A')).toBe('biased');
    expect([...found.values()].filter((verdict) => verdict === 'within')).toHaveLength(3);
  });

  test('one that reads far off draws the mean to itself, and those that read as most do are not called biased for it', () => {
    // Of four, weighted alike: the mean is drawn 0.3 points up, twice the tolerance, by the one that reads 1.2 high.
    const [high, ...others] = judged(
      () => 1.2,
      (_, code) => code,
    );
    expect(high.verdict).toBe('biased');
    for (const { o2, verdict, reason } of others) {
      expect(o2.value).toBeLessThan(-0.15);
      expect(verdict).toBe('within');
      expect(reason).toContain('as most analyzers do');
    }
  });

  test('each unit read by one analyzer only: confounded, whatever it reads', () => {
    const found = verdicts(0, (unit) => unit % 4);
    expect([...found.values()].every((verdict) => verdict === 'confounded')).toBe(true);
  });

  test('a single analyzer has nothing to be compared with', () => {
    expect([...verdicts(0, () => 0).values()]).toEqual(['confounded']);
  });

  test('one that read right and then half a point high: told since when, and what it makes of the drift', () => {
    const began = 12_365 + 4.5 * 365;
    const [high] = judged(
      (day) => (day >= began ? 0.5 : 0),
      (_, code) => code,
    );
    expect(high.verdict).toBe('biased');
    // Every unit is visited once a year.
    expect(Math.abs(high.offSince - began)).toBeLessThan(366);
    expect(high.reason).toContain('before that day');
    expect(high.driftShare).toBeGreaterThan(0);
  });

  test('all read more from one day on: that is what they read, not the analyzers', () => {
    const found = judged(
      (day) => (day >= 12_365 + 5.5 * 365 ? 0.6 : 0),
      (_, code) => code,
      () => true,
    );
    expect(found.map(({ changedOn }) => changedOn)).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
    expect(found.map(({ verdict }) => verdict)).toEqual(['within', 'within', 'within', 'within']);
  });

  test('a steady one reads off since its first reading; the others explain next to nothing', () => {
    const [high, ...others] = judged(
      () => 0.5,
      (_, code) => code,
    );
    expect(high.offSince).toBe(high.from);
    expect(Math.abs(high.changeByBias - 0.5)).toBeLessThan(0.12);
    for (const { offSince, driftShare } of others) {
      expect(offSince).toBeNaN();
      expect(driftShare).toBeLessThan(high.driftShare / 3);
    }
  });
});
