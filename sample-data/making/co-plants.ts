import { calendar } from './calendar.ts';
import { PLANTS } from './plants.ts';
import type { Reading } from './reading.ts';

const LAST_ROUND = calendar.day('2026-07-01');

/** Puts the two planted CO readings in: one found high in the last round and left shut, one over the sensor's range that the same visit set right. */
export function withCoPlants(readings: readonly Reading[]): readonly Reading[] {
  const { openCo, closedCo } = PLANTS;
  return readings.flatMap((reading) => {
    const { unit, fire, state, visit } = reading;
    if (unit === openCo.unit && fire === openCo.fire && visit.day > LAST_ROUND) {
      const note = 'CO high and not steady; shut down and tagged, heat exchanger to be opened';
      return state === 'as_found' ? [{ ...reading, co: openCo.coPpm, note }] : [];
    }
    const round = visit.reason === 'scheduled' && calendar.year(visit.day) === closedCo.year;
    if (unit === closedCo.unit && fire === closedCo.fire && state === 'as_found' && round)
      return [{ ...reading, co: closedCo.coPpm, note: 'intake screen blocked by wet leaves, cleared' }];
    return [reading];
  });
}
