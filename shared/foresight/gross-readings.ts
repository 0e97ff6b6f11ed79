import { medianOf } from '../statistics/median-of.ts';
import { type FleetReadings, READING_STATE } from './fleet-readings.ts';

/** A reading further than this from both its neighbours, in points of O2, and than so many usual steps, is no drift. */
const FAR_POINTS = 2.5;
const FAR_STEPS = 8;
/** Steps from which a usual one is worth telling. */
const ENOUGH_STEPS = 10;

/**
 * Readings far from the lane's reading before and from the one after, to the same side: a slipped digit, a probe half out,
 * or a fault that was put right at the same visit. None of these is a drift, and one of them would spoil the variances of a
 * whole fleet; they are shown, and left out of the fit. A first or last reading is never called gross: it may be news.
 */
export function grossReadings(readings: FleetReadings): Uint8Array {
  const { rows, lane, lanes, first, second, state } = readings;
  const gross = new Uint8Array(rows);
  const value = (row: number): number => (Number.isFinite(first[row]) ? first[row] : second[row]);
  const before = new Int32Array(rows).fill(-1);
  const after = new Int32Array(rows).fill(-1);
  const last = new Int32Array(lanes.count).fill(-1);
  const steps: number[] = [];
  for (let row = 0; row < rows; row++) {
    if (state[row] === READING_STATE.trial || !Number.isFinite(value(row))) continue;
    const previous = last[lane[row]];
    if (previous >= 0) {
      before[row] = previous;
      after[previous] = row;
      // An adjustment is no step of the level's own.
      if (state[row] !== READING_STATE.left) steps.push(Math.abs(value(row) - value(previous)));
    }
    last[lane[row]] = row;
  }
  const usual = steps.length >= ENOUGH_STEPS ? 1.4826 * medianOf(steps) : 0;
  const far = Math.max(FAR_POINTS, FAR_STEPS * usual);
  for (let row = 0; row < rows; row++) {
    if (before[row] < 0 || after[row] < 0) continue;
    const [up, down] = [value(row) - value(before[row]), value(row) - value(after[row])];
    if (Math.abs(up) > far && Math.abs(down) > far && up * down > 0) gross[row] = 1;
  }
  return gross;
}
