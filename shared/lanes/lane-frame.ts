import type { UnitLanes } from './lane.ts';

/** 'small' fits a table row, 'large' a page. */
export type LaneSize = 'small' | 'large';

/** What all lanes of one picture share: the paper, the gutters and the time axis. Lengths in user units (CSS pixels). */
export interface LaneFrame {
  readonly size: LaneSize;
  readonly width: number;
  /** Where time begins and ends. */
  readonly left: number;
  readonly right: number;
  readonly firstDay: number;
  readonly lastDay: number;
  readonly asOf: number;
  x(day: number): number;
}

const PAPER = {
  small: { width: 300, left: 34, right: 292 },
  large: { width: 760, left: 118, right: 744 },
} as const;

/** A date of leaving further off than this after the horizon is written, not drawn. */
const LOOK_BEYOND_DAYS = 731;
const SHORTEST_SPAN_DAYS = 365;

/** The common time axis: from the first reading to the horizon, or to the date of leaving where that is near. */
export function frameOf(unit: UnitLanes, size: LaneSize): LaneFrame {
  const { width, left, right } = PAPER[size];
  const asOfs = unit.lanes.map((lane) => lane.asOf).filter(Number.isFinite);
  const seen = [
    ...unit.lanes.flatMap((lane) => lane.readings.map(({ day }) => day)),
    ...(unit.supply?.readings.map(({ day }) => day) ?? []),
  ].filter(Number.isFinite);
  const asOf = asOfs.length > 0 ? Math.max(...asOfs) : Math.max(...seen, 0);
  const ends = unit.lanes.flatMap(({ horizon, leavesOn }) =>
    leavesOn <= horizon + LOOK_BEYOND_DAYS ? [horizon, leavesOn] : [horizon],
  );
  const first = Math.min(asOf, ...seen);
  const last = Math.max(asOf, ...seen, ...ends.filter(Number.isFinite));
  const span = Math.max(last - first, SHORTEST_SPAN_DAYS);
  const firstDay = first - span * 0.02;
  const lastDay = first + span * 1.02;
  const perDay = (right - left) / (lastDay - firstDay);
  return { size, width, left, right, firstDay, lastDay, asOf, x: (day) => left + (day - firstDay) * perDay };
}
