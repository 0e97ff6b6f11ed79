import { medianOf } from '../statistics/median-of.ts';
import { numbersOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import { co2AsO2 } from './co2-line.ts';
import { READING_STATE } from './fleet-readings.ts';
import type { LaneName } from './lane-name.ts';
import { type LaneTarget, targetFromReadings, targetOn, targetsOfLanes, USUAL_TOLERANCE_O2 } from './lane-targets.ts';

/** Readings in O2 points as the model takes them. */
export interface JudgedReadings {
  readonly lane: Int32Array;
  readonly first: Float64Array;
  readonly second: Float64Array;
  readonly states: Uint8Array;
  readonly day: Float64Array;
}

/**
 * The technician's aim on the day of each reading. Where targets are set on the instrument as it shows, what a reading is
 * off its target as shown is what it is off the aim; where they are set by a season card, the aim is the target itself.
 * Which of the two a crew does is told by the as-left readings, or without these by what the next visit found: the way in
 * which they lie closer to the aim.
 */
export function aimsOf(
  { derived, limits }: { readonly derived: Table; readonly limits: Table | undefined },
  order: readonly number[],
  lanes: readonly LaneName[],
  co2maxOf: (lane: number) => number,
  { first, second, states, day, lane }: JudgedReadings,
  adjusted: Int8Array,
): { aim: Float64Array; tolerance: Float64Array; aimInCo2: Uint8Array } {
  const [o2, co2] = [numbersOf(derived, 'o2_pct'), numbersOf(derived, 'co2_pct')];
  const judged = Float64Array.from(first, (value, i) => (Number.isFinite(value) ? value : second[i]));
  const shown = Float64Array.from(first, (value, i) =>
    Number.isFinite(value) ? o2[order[i]] : co2AsO2(co2[order[i]], co2maxOf(lane[i])),
  );
  const registered = targetsOfLanes(limits, lanes, co2maxOf);
  const aimsBy = (values: Float64Array): Float64Array => {
    const targets = completeTargets(registered, values, states, lane);
    return Float64Array.from(values, (_, i) => targetOn(targets[lane[i]], day[i])?.o2 ?? Number.NaN);
  };
  const [ofShown, ofJudged] = [aimsBy(shown), aimsBy(judged)];
  const byDisplay = Float64Array.from(judged, (value, i) => value - shown[i] + ofShown[i]);
  const told = toldBy({ first: judged, second, states, day, lane }, adjusted);
  const apart = (aims: Float64Array): number => medianOf(told.map(([i, at]) => Math.abs(judged[i] - aims[at])));
  const aim = apart(ofJudged) < apart(byDisplay) ? ofJudged : byDisplay;
  const tolerance = Float64Array.from(
    judged,
    (_, i) => targetOn(registered[lane[i]], day[i])?.tolerance ?? USUAL_TOLERANCE_O2,
  );
  const aimInCo2 = Uint8Array.from(registered, (targets) => Number(targets[targets.length - 1]?.inCo2 ?? false));
  return { aim, tolerance, aimInCo2 };
}

/** As-left readings from which they tell by themselves what the crew does. */
const ENOUGH_LEFT = 5;

/**
 * Readings that tell what was aimed at, each with the reading on whose day it was: as-left ones, else as-found ones after a
 * visit that adjusted or may have.
 */
function toldBy({ first, states, lane }: JudgedReadings, adjusted: Int8Array): (readonly [number, number])[] {
  const rows = [...first.keys()].filter((i) => Number.isFinite(first[i]));
  const left = rows.filter((i) => states[i] === READING_STATE.left);
  if (left.length >= ENOUGH_LEFT) return left.map((i) => [i, i]);
  const last = new Map<number, number>();
  return rows.flatMap((i) => {
    const before = last.get(lane[i]);
    last.set(lane[i], i);
    if (before === undefined || states[i] !== READING_STATE.found || adjusted[before] === 0) return [];
    return [[i, before] as const];
  });
}

/** The register's targets, else what the readings of a lane suggest. */
function completeTargets(
  registered: readonly LaneTarget[][],
  values: Float64Array,
  states: Uint8Array,
  lane: Int32Array,
): LaneTarget[][] {
  const [left, found]: number[][][] = [registered.map(() => []), registered.map(() => [])];
  states.forEach((state, i) => {
    if (registered[lane[i]].length > 0 || !Number.isFinite(values[i])) return;
    if (state === READING_STATE.left) left[lane[i]].push(values[i]);
    else if (state === READING_STATE.found) found[lane[i]].push(values[i]);
  });
  return registered.map((list, i) => (list.length > 0 ? list : targetFromReadings(left[i], found[i])));
}
