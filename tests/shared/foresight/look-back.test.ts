import { describe, expect, test } from 'vitest';
import { DEFAULT_BANDS } from '../../../shared/foresight/default-bands.ts';
import { type Forecast, LookBack } from '../../../shared/foresight/look-back.ts';
import { scoreLookBack } from '../../../shared/foresight/score-look-back.ts';
import { tableOfRecords } from '../../../shared/foresight/table-of-records.ts';
import { eventsSchema } from '../../../shared/schemas/events.ts';
import { PLAIN_FLEET, simulateFleet } from '../../verify/simulate-fleet.ts';
import { tablesOfFleet } from '../../verify/tables-of-fleet.ts';

const fleet = simulateFleet({ ...PLAIN_FLEET, units: 60, visits: 9, seed: 3 });
const tables = tablesOfFleet(fleet);
const asOf = Math.floor(Math.max(...fleet.lastDay));
const options = { seed: 1, referenceAir: true, horizonDays: 365, quantity: 'as_target', bands: DEFAULT_BANDS } as const;
const past = Array.from({ length: 10 }, (_, i) => asOf - (10 - i) * 182);

function lookBack(events?: Parameters<typeof tableOfRecords>[1]): Forecast[] {
  const known = { ...tables, events: events ? tableOfRecords(eventsSchema, events) : undefined };
  const looking = new LookBack(known, asOf, options);
  return past.flatMap((day) => looking.on(day));
}

describe('looking back over a simulated fleet', () => {
  const forecasts = lookBack();

  test('nothing is said with knowledge of what came after, and each visit counts once', () => {
    for (const { saidOn, foundOn } of forecasts) expect(foundOn).toBeGreaterThan(saidOn);
    const first = forecasts.filter(({ isFirst }) => isFirst);
    const visits = new Set(first.map(({ unit, fire, foundOn }) => [unit, fire, foundOn].join()));
    expect(visits.size).toBe(first.length);
    const early = new LookBack(tables, asOf, options).on(past[0]);
    const shortened = new LookBack(tables, past[3], options).on(past[0]);
    const said = new Map(early.map((forecast) => [`${forecast.unit} ${forecast.fire}`, forecast.expected]));
    for (const { unit, fire, expected, foundOn } of shortened)
      if (foundOn <= past[3]) expect(said.get(`${unit} ${fire}`)).toBeCloseTo(expected, 9);
  });

  test('intervals hold, and chances beat the plain baselines', () => {
    const score = scoreLookBack(forecasts, 0.5);
    const [half, eighty, most] = score.coverage.map(({ share }) => share);
    expect(half).toBeGreaterThan(0.4);
    expect(half).toBeLessThan(0.6);
    expect(eighty).toBeGreaterThan(0.7);
    expect(most).toBeGreaterThan(0.88);
    const [own, last, line] = score.methods.map(({ brier }) => brier);
    expect(own).toBeLessThan(last);
    expect(own).toBeLessThan(line);
    expect(score.raisedFoundOutside).toBeLessThanOrEqual(score.raised);
  });

  test('a forecast across a change of hardware is not held against what came after', () => {
    const unit = forecasts[0].unit;
    const changed = lookBack([{ unit, on: past[0] + 1, event: 'replaced' }]);
    const across = changed.filter((forecast) => forecast.unit === unit && forecast.saidOn === past[0]);
    expect(across).toEqual([]);
  });

  test('no forecast at all: counts of nothing, no number made up', () => {
    const score = scoreLookBack([], 0.5);
    expect(score.forecasts).toBe(0);
    expect(score.calibration).toEqual([]);
    expect(score.leadDays).toBeNaN();
  });
});
