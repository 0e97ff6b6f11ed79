import { DAYS_PER_YEAR } from '../quantities/dates.ts';
import type { DriftReadings } from './drift-readings.ts';
import type { FleetFit } from './fit-model.ts';
import { type FleetReadings, READING_STATE } from './fleet-readings.ts';
import { sameVisit } from './visit-rows.ts';

/** From what a visit left of a lane to what the next found there: the change seen, and who read its two ends. */
export interface AnalyzerInterval {
  readonly unit: number;
  readonly from: number;
  readonly to: number;
  readonly before: number;
  readonly after: number;
  /** Points of O2, as read. */
  readonly change: number;
  /** The same less what the lane's own rate makes of it: biases and noise. */
  readonly beyondRate: number;
}

/** Intervals of O2 of which both ends name their analyzer; none over a change of hardware or an unrecorded adjustment, none before a late drift began. */
export function intervalsOf({ fleet }: DriftReadings, { written, states, began }: FleetFit): AnalyzerInterval[] {
  const intervals: AnalyzerInterval[] = [];
  const last = new Int32Array(fleet.lanes.count).fill(-1);
  for (let row = 0; row < fleet.rows; row++) {
    if (written.used[row] === 0 || !Number.isFinite(fleet.first[row])) continue;
    const lane = fleet.lane[row];
    const start = last[lane];
    last[lane] = row;
    // Before a lane began to drift it had another rate.
    if (start < 0 || fleet.day[start] < began[lane] || !isInterval(fleet, start, row)) continue;
    const [from, to] = [fleet.day[start], fleet.day[row]];
    const change = fleet.first[row] - fleet.first[start];
    const years = (to - from) / DAYS_PER_YEAR;
    intervals.push({
      unit: fleet.unit[row],
      from,
      to,
      before: fleet.analyzer[start],
      after: fleet.analyzer[row],
      change,
      beyondRate: change - states.rate[lane] * years,
    });
  }
  return intervals;
}

function isInterval(fleet: FleetReadings, start: number, end: number): boolean {
  const { day, visit, state, adjusted, analyzer, breaks, unit } = fleet;
  if (analyzer[start] < 0 || analyzer[end] < 0 || state[end] === READING_STATE.left) return false;
  if (sameVisit(day, visit, start, end) || (state[start] !== READING_STATE.left && adjusted[start] === 1)) return false;
  return !(breaks[unit[end]] ?? []).some((on) => on > day[start] && on <= day[end]);
}
