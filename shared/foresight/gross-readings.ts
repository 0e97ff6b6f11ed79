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
  const [gross, sudden] = [0, 1].map(() => new Uint8Array(readings.rows));
  const visits = visitsOfLanes(readings);
  const usual = usualStep(visits);
  const limit = ({ points, steps }: Far): number => Math.max(points, steps * usual);
  const [farVisit, farReading] = [limit(FAR_VISIT), limit(FAR_READING)];
  for (const own of visits) {
    const sequence = own.flatMap(({ rows }) => rows);
    sequence.forEach((row, i) => {
      if (i === 0 || i === sequence.length - 1) return;
      // Nobody sets a burner further off its aim than it was before and will be at the next visit.
      const far = isLeftOff(readings, row, farVisit) ? farVisit : farReading;
      if (isApart(readings, [row], sequence[i - 1], sequence[i + 1], far)) gross[row] = 1;
    });
    own.forEach(({ rows }, v) => {
      const [before, after] = [own[v - 1]?.rows, own[v + 1]?.rows];
      if (!before || !after || !isApart(readings, rows, before[before.length - 1], after[0], farVisit)) return;
      for (const row of rows) gross[row] = 1;
    });
    for (const { rows } of suddenVisits(own, farVisit)) sudden[rows[0]] = 1;
  }
  return { gross, sudden };
}

function isApart(
  readings: FleetReadings,
  rows: readonly number[],
  before: number,
  after: number,
  far: number,
): boolean {
  const apart = rows.flatMap((row) =>
    [before, after].map((other) => readingOf(readings, row) - readingOf(readings, other)),
  );
  return apart.every((by) => by > far) || apart.every((by) => by < -far);
}

function isLeftOff(readings: FleetReadings, row: number, far: number): boolean {
  const { state, aim } = readings;
  return state[row] === READING_STATE.left && Math.abs(readingOf(readings, row) - aim[row]) > far;
}

/** The second visit or the last one, where the step that led there is unlike every other. */
function suddenVisits(own: readonly LaneVisit[], far: number): LaneVisit[] {
  const ends = own.length < 3 ? [] : [1, own.length - 1];
  return ends
    .filter((at) => own.every(({ step }, i) => i === 0 || (i === at ? step > far : own[at].step > UNLIKE * step)))
    .map((at) => own[at]);
}

/** Readings of a lane on one day, in order, and how far the first of them is from the visit before. */
interface LaneVisit {
  readonly day: number;
  readonly rows: number[];
  readonly step: number;
}

function visitsOfLanes(readings: FleetReadings): LaneVisit[][] {
  const { rows, lane, lanes, state, day } = readings;
  const visits: LaneVisit[][] = Array.from({ length: lanes.count }, () => []);
  for (let row = 0; row < rows; row++) {
    const value = readingOf(readings, row);
    if (state[row] === READING_STATE.trial || !Number.isFinite(value)) continue;
    const own = visits[lane[row]];
    const last = own[own.length - 1];
    const date = Math.floor(day[row]);
    if (last?.day === date) last.rows.push(row);
    else {
      // An adjustment is no step of the level's own.
      const known = last && state[row] !== READING_STATE.left;
      const step = known ? Math.abs(value - readingOf(readings, last.rows[last.rows.length - 1])) : Number.NaN;
      own.push({ day: date, rows: [row], step });
    }
  }
  return visits;
}

/** A standard deviation's worth of steps from visit to visit, 0 where too few are known. */
function usualStep(visits: readonly (readonly LaneVisit[])[]): number {
  const steps = visits.flatMap((own) => own.flatMap(({ step }) => (Number.isFinite(step) ? [step] : [])));
  return steps.length >= ENOUGH_STEPS ? 1.4826 * medianOf(steps) : 0;
}
