import { drawPath } from './draw-path.ts';
import type { SupplyLane } from './lane.ts';
import { LANE_COLORS } from './lane-colors.ts';
import type { LaneFrame } from './lane-frame.ts';
import { at } from './svg-numbers.ts';

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
  const limit = Number.isFinite(supply.limitPa)
    ? `<path d="M${at(left)} ${at(y(supply.limitPa))}H${at(right)}" stroke="${LANE_COLORS.edge}" stroke-width="1" stroke-dasharray="7 2 1 2" fill="none"/>`
    : '';
  return (
    `<path d="M${at(left)} ${at(top)}H${at(right)}" stroke="${LANE_COLORS.edge}" stroke-width="1.2" fill="none"/>` +
    drawPath(path, x, y, asOf, {
      line: LANE_COLORS.supply,
      lineWidth: 1.3,
      spread: LANE_COLORS.supply,
      spreadOpacity: 0.15,
      dash: '4 3',
    }) +
    `<path d="${columns}" fill="${LANE_COLORS.supply}"/>` +
    limit
  );
}
