import { type FleetReadings, READING_STATE } from './fleet-readings.ts';

/** Rows of one visit id further apart than this are two visits. */
const VISIT_DAYS = 14;
/** First row after those of a unit. */
export function endOfUnit(unit: Int32Array, from: number, rows: number, u: number): number {
  let end = from;
  while (end < rows && unit[end] === u) end++;
  return end;
}

/** First row after those of the visit that starts at `start`. */
export function endOfVisit(day: Float64Array, visit: Int32Array, start: number, to: number): number {
  let end = start + 1;
  while (end < to && sameVisit(day, visit, start, end)) end++;
  return end;
}

/** Whether two rows of a unit are one visit: the same id within a fortnight, or the same day where one has no id. */
export function sameVisit(day: Float64Array, visit: Int32Array, start: number, row: number): boolean {
  if (visit[start] >= 0 && visit[start] === visit[row]) return day[row] - day[start] <= VISIT_DAYS;
  return Math.floor(day[start]) === Math.floor(day[row]) && (visit[start] < 0 || visit[row] < 0);
}

/** Analyzers all of whose readings lie on one day of one unit: 1, else 0. */
export function analyzersOfOneVisit({ rows, unit, day, analyzer, analyzers }: FleetReadings): Uint8Array {
  const first = new Int32Array(analyzers).fill(-1);
  const single = new Uint8Array(analyzers).fill(1);
  for (let row = 0; row < rows; row++) {
    const code = analyzer[row];
    if (code < 0) continue;
    if (first[code] < 0) first[code] = row;
    else if (unit[first[code]] !== unit[row] || Math.floor(day[first[code]]) !== Math.floor(day[row])) single[code] = 0;
  }
  return single;
}

/** Whether an as-left reading repeats one of the visit's as-found readings. */
export function copiesFound({ first, second }: FleetReadings, row: number, found: readonly number[]): boolean {
  return found.some((other) => Object.is(first[row], first[other]) && Object.is(second[row], second[other]));
}

/** Whether readings of one lane and visit say that it was adjusted: 1 yes, 0 no, -1 not known. */
export function adjustedAt({ adjusted }: FleetReadings, rows: readonly number[]): number {
  let known = -1;
  for (const row of rows) if (adjusted[row] > known) known = adjusted[row];
  return known;
}

/**
 * Per lane: 1 where in its class a visit that may have adjusted tells only what was left, or not which: the adjustment took back
 * what had drifted, and nobody saw it. Visits of that kind at which nothing was adjusted are then those of little drift, so that
 * none of the class tells of a rate.
 */
export function adjustedUnseen(readings: FleetReadings): Uint8Array {
  const { rows, lane, lanes, state, adjusted, classes } = readings;
  const unseen = new Uint8Array(classes);
  for (let row = 0; row < rows; row++) {
    const of = lanes.classOf[lane[row]];
    if (unseen[of] === 1 || adjusted[row] === 0) continue;
    if (state[row] === READING_STATE.unknown || (state[row] === READING_STATE.left && !isFoundAt(readings, row)))
      unseen[of] = 1;
  }
  return Uint8Array.from(lanes.classOf, (of) => unseen[of]);
}

/** Whether the visit of a reading has an as-found one of the same lane. */
function isFoundAt({ rows, unit, lane, state, day, visit }: FleetReadings, row: number): boolean {
  const isVisit = (other: number): boolean =>
    other >= 0 &&
    other < rows &&
    unit[other] === unit[row] &&
    sameVisit(day, visit, Math.min(row, other), Math.max(row, other));
  const isFound = (other: number): boolean => lane[other] === lane[row] && state[other] === READING_STATE.found;
  for (let other = row - 1; isVisit(other); other--) if (isFound(other)) return true;
  for (let other = row + 1; isVisit(other); other++) if (isFound(other)) return true;
  return false;
}
