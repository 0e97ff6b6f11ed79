import type { DriftReadings } from './drift-readings.ts';
import { READING_STATE } from './fleet-readings.ts';
import type { LaneName } from './lane-name.ts';

export const laneKey = ({ unit, fuel, fire }: LaneName): string => `${unit}\u0000${fuel}\u0000${fire}`;

/** As-found readings of a lane in order of time, and its last readings of any state, in O2 points. */
export interface LaneHistory {
  readonly foundDays: readonly number[];
  readonly foundO2: readonly number[];
  /** Analyzer of each as-found reading, '' where not named. */
  readonly foundBy: readonly string[];
  readonly days: readonly number[];
  readonly o2: readonly number[];
}

interface Growing {
  readonly foundDays: number[];
  readonly foundO2: number[];
  readonly foundBy: string[];
  readonly days: number[];
  readonly o2: number[];
}

/** What each lane was read at, by its key: what a forecast is held against. */
export function laneHistories({ fleet, lanes, analyzers }: DriftReadings): Map<string, LaneHistory> {
  const histories = lanes.map((): Growing => ({ foundDays: [], foundO2: [], foundBy: [], days: [], o2: [] }));
  for (let row = 0; row < fleet.rows; row++) {
    const value = Number.isFinite(fleet.first[row]) ? fleet.first[row] : fleet.second[row];
    if (!Number.isFinite(value) || fleet.state[row] === READING_STATE.trial) continue;
    const { foundDays, foundO2, foundBy, days, o2 } = histories[fleet.lane[row]];
    days.push(fleet.day[row]);
    o2.push(value);
    if (fleet.state[row] !== READING_STATE.found) continue;
    foundDays.push(fleet.day[row]);
    foundO2.push(value);
    foundBy.push(analyzers[fleet.analyzer[row]] ?? '');
  }
  return new Map(lanes.map((lane, i) => [laneKey(lane), histories[i]]));
}
