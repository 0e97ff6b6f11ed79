import type { SupplyLane } from './lane.ts';
import { LANE_COLORS } from './lane-colors.ts';
import type { LaneFrame } from './lane-frame.ts';
import { at, pathData } from './svg-numbers.ts';

/**
 * The drop of the gas supply, hanging from the static pressure as a water column would: the longer, the worse.
 * The line below is the limit, where one is known.
 */
export function drawSupplyLane(supply: SupplyLane, frame: LaneFrame, top: number, height: number): string {
  const { x, left, right, size, asOf, lastDay } = frame;
  const path = supply.path.filter(({ day }) => day <= lastDay);
  const deepest = Math.max(
    ...supply.readings.map(({ dropPa }) => dropPa),
    ...path.map(({ level }) => level),
    Number.isFinite(supply.limitPa) ? supply.limitPa * 1.2 : 0,
    1,
  );
  const y = (pa: number): number => top + (Math.min(Math.max(pa, 0), deepest * 1.08) / (deepest * 1.08)) * height;
  const half = size === 'large' ? 2.6 : 1.5;
  const columns = supply.readings
    .map(({ day, dropPa }) => `M${at(x(day) - half)} ${at(top)}h${at(half * 2)}V${at(y(dropPa))}h${at(-half * 2)}Z`)
    .join('');
  const spread = path.filter(({ lower, upper }) => Number.isFinite(lower + upper));
  const outline = [
    ...spread.map(({ day, upper }): [number, number] => [x(day), y(upper)]),
    ...spread.toReversed().map(({ day, lower }): [number, number] => [x(day), y(lower)]),
  ];
  const line = (points: typeof path, dash: string): string =>
    points.length < 2
      ? ''
      : `<path d="${pathData(points.map(({ day, level }) => [x(day), y(level)]))}" fill="none" stroke="${LANE_COLORS.supply}" stroke-width="1.3"${dash}/>`;
  const limit = Number.isFinite(supply.limitPa)
    ? `<path d="M${at(left)} ${at(y(supply.limitPa))}H${at(right)}" stroke="${LANE_COLORS.edge}" stroke-width="1" stroke-dasharray="7 2 1 2" fill="none"/>`
    : '';
  return (
    `<path d="M${at(left)} ${at(top)}H${at(right)}" stroke="${LANE_COLORS.edge}" stroke-width="1.2" fill="none"/>` +
    (outline.length > 3
      ? `<path d="${pathData(outline)}Z" fill="${LANE_COLORS.supply}" fill-opacity=".15" stroke="none"/>`
      : '') +
    `<path d="${columns}" fill="${LANE_COLORS.supply}"/>` +
    line(
      path.filter(({ day }) => day <= asOf),
      '',
    ) +
    line(
      path.filter(({ day }, index) => day >= asOf || (path[index + 1]?.day ?? Number.NaN) > asOf),
      ' stroke-dasharray="4 3"',
    ) +
    limit
  );
}
