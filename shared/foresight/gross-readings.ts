import { medianOf } from '../statistics/median-of.ts';
import { type FleetReadings, READING_STATE, readingOf } from './fleet-readings.ts';

/** Distances, in points of O2 and in usual steps from visit to visit, both of which are too far. */
interface Far {
  readonly points: number;
  readonly steps: number;
}
/** From the visit before and from the one after: a level that went there was not brought back by anyone. */
const FAR_VISIT: Far = { points: 2, steps: 3.5 };
/** Of one reading among others of its visit: between found and left somebody may have turned the screw. */
const FAR_READING: Far = { points: 2.5, steps: 8 };
/** Times the largest other step of a lane beyond which a first or last visit is unlike the lane. */
const UNLIKE = 3;
/** Steps from which a usual one is worth telling. */
const ENOUGH_STEPS = 10;

export interface GrossReadings {
  /** Per reading: 1 where it is far from what was read before and after it. */
  readonly gross: Uint8Array;
  /** Per reading: 1 where the level begins anew, the first or the last step of a lane being unlike all its others. */
  readonly sudden: Uint8Array;
}

/**
 * Readings far from the lane's visit before and from the one after, to the same side: a slipped digit, a probe half out, or a
 * fault that was put right at the same visit. None of these is a drift, and one of them would spoil the variances of a whole
 * fleet; they are shown, and left out of the fit. A first or last visit is never called gross: it may be news. The level is
 * then taken as it was read, and neither a rate nor how much the fleet varies is told by the step that led there.
 */
export function grossReadings(readings: FleetReadings): GrossReadings {
  const { rows, lanes } = readings;
  const [gross, sudden] = [0, 1].map(() => new Uint8Array(rows));
  const { starts, byLane } = rowsByLane(readings);
  const step = stepsOf(readings, starts, byLane);
  const usual = usualStep(step);
  const limit = ({ points, steps }: Far): number => Math.max(points, steps * usual);
  const [farVisit, farReading] = [limit(FAR_VISIT), limit(FAR_READING)];
  for (let lane = 0; lane < lanes.count; lane++) {
    const [from, to] = [starts[lane], starts[lane + 1]];
    for (let i = from + 1; i < to - 1; i++) {
      // Nobody sets a burner further off its aim than it was before and will be at the next visit.
      const far = isLeftOff(readings, byLane[i], farVisit) ? farVisit : farReading;
      if (sideOf(readings, byLane[i], byLane[i - 1], byLane[i + 1], far) !== 0) gross[byLane[i]] = 1;
    }
    for (let start = from, end = from; start < to; start = end) {
      end = endOfDay(readings, byLane, start, to);
      if (start > from && end < to && areApart(readings, byLane, start, end, farVisit))
        for (let i = start; i < end; i++) gross[byLane[i]] = 1;
    }
    markSudden(sudden, step, byLane.subarray(from, to), farVisit);
  }
  return { gross, sudden };
}

/** 1 where a reading is further above both others, -1 where below, else 0. */
function sideOf(readings: FleetReadings, row: number, before: number, after: number, far: number): number {
  const value = readingOf(readings, row);
  const [up, down] = [value - readingOf(readings, before), value - readingOf(readings, after)];
  return up > far && down > far ? 1 : up < -far && down < -far ? -1 : 0;
}

/** Whether all readings of a visit are to the same side of the visits around it. */
function areApart(readings: FleetReadings, byLane: Int32Array, start: number, end: number, far: number): boolean {
  const side = (i: number): number => sideOf(readings, byLane[i], byLane[start - 1], byLane[end], far);
  const first = side(start);
  for (let i = start + 1; i < end && first !== 0; i++) if (side(i) !== first) return false;
  return first !== 0;
}

function isLeftOff(readings: FleetReadings, row: number, far: number): boolean {
  const { state, aim } = readings;
  return state[row] === READING_STATE.left && Math.abs(readingOf(readings, row) - aim[row]) > far;
}

/** The second visit or the last one of a lane, where the step that led there is unlike every other. */
function markSudden(sudden: Uint8Array, step: Float64Array, own: Int32Array, far: number): void {
  if (!own.some((row) => step[row] > far)) return;
  const visits = own.filter((row) => !Number.isNaN(step[row]));
  // The first visit has no step; what follows from the only one may as well be a drift.
  if (visits.length < 3) return;
  for (const at of [visits[1], visits[visits.length - 1]])
    if (step[at] > far && visits.every((row) => row === at || step[at] > UNLIKE * step[row])) sudden[at] = 1;
}

/** Rows with a number, lane by lane in order of time; trials are the way from found to left. */
function rowsByLane(readings: FleetReadings): { starts: Int32Array; byLane: Int32Array } {
  const { rows, lane, lanes, state } = readings;
  const counts = (row: number): boolean =>
    state[row] !== READING_STATE.trial && Number.isFinite(readingOf(readings, row));
  const starts = new Int32Array(lanes.count + 1);
  for (let row = 0; row < rows; row++) if (counts(row)) starts[lane[row] + 1]++;
  for (let l = 0; l < lanes.count; l++) starts[l + 1] += starts[l];
  const next = starts.slice();
  const byLane = new Int32Array(starts[lanes.count]);
  for (let row = 0; row < rows; row++) if (counts(row)) byLane[next[lane[row]]++] = row;
  return { starts, byLane };
}

function endOfDay({ day }: FleetReadings, byLane: Int32Array, start: number, to: number): number {
  let end = start + 1;
  while (end < to && Math.floor(day[byLane[end]]) === Math.floor(day[byLane[start]])) end++;
  return end;
}

/** Per reading that begins a visit: how far it is from the last one of the visit before, 0 at a first visit or where only left; else NaN. */
function stepsOf(readings: FleetReadings, starts: Int32Array, byLane: Int32Array): Float64Array {
  const step = new Float64Array(readings.rows).fill(Number.NaN);
  for (let lane = 0; lane < readings.lanes.count; lane++)
    for (
      let start = starts[lane];
      start < starts[lane + 1];
      start = endOfDay(readings, byLane, start, starts[lane + 1])
    ) {
      const row = byLane[start];
      // An adjustment is no step of the level's own.
      const isStep = start > starts[lane] && readings.state[row] !== READING_STATE.left;
      step[row] = isStep ? Math.abs(readingOf(readings, row) - readingOf(readings, byLane[start - 1])) : 0;
    }
  return step;
}

/** A standard deviation's worth of steps from visit to visit, 0 where too few are known. */
function usualStep(step: Float64Array): number {
  const known = step.filter((size) => size > 0);
  return known.length >= ENOUGH_STEPS ? 1.4826 * medianOf(Array.from(known)) : 0;
}
