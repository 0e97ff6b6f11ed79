import { dayOf, writeDay } from '../quantities/dates.ts';
import { LANE_COLORS } from './lane-colors.ts';
import type { LaneFrame } from './lane-frame.ts';
import { at } from './svg-numbers.ts';

const YEAR_LABEL_PX = 40;
/** Years nearer to the as-of day than this give way to its date. */
const AS_OF_PX = 56;
const STEPS = [1, 2, 5, 10, 20, 50];

function yearsOf({ firstDay, lastDay, left, right }: LaneFrame): number[] {
  const first = Number(writeDay(firstDay).slice(0, 4)) + 1;
  const last = Number(writeDay(lastDay).slice(0, 4));
  const perYear = ((right - left) / (lastDay - firstDay)) * 365.25;
  const step = STEPS.find((years) => years * perYear >= YEAR_LABEL_PX) ?? 100;
  const years: number[] = [];
  for (let year = Math.ceil(first / step) * step; year <= last; year += step) years.push(year);
  return years;
}

/** Years under the lanes, and the day the notebook looks from drawn through all of them. */
export function drawTimeAxis(frame: LaneFrame, top: number, bottom: number): string {
  const { x, size, asOf, left, right } = frame;
  const now = `<path d="M${at(x(asOf))} ${at(top)}V${at(bottom)}" stroke="${LANE_COLORS.ink}" stroke-width="${size === 'large' ? 1 : 0.8}" stroke-dasharray="1.5 2.5" fill="none"/>`;
  if (size === 'small') return now;
  const years = yearsOf(frame);
  const ticks = years.map((year) => `M${at(x(dayOf(year, 1, 1)))} ${at(bottom)}v5`).join('');
  const labels = years
    .filter((year) => x(dayOf(year, 1, 1)) > left + 12 && x(dayOf(year, 1, 1)) < right - 10)
    .filter((year) => Math.abs(x(dayOf(year, 1, 1)) - x(asOf)) > AS_OF_PX)
    .map((year) => `<text x="${at(x(dayOf(year, 1, 1)))}" y="${at(bottom + 17)}">${year}</text>`)
    .join('');
  return (
    now +
    `<path d="M${at(left)} ${at(bottom)}H${at(right)}${ticks}" stroke="${LANE_COLORS.quiet}" stroke-width="1" fill="none"/>` +
    `<g text-anchor="middle" font-size="11" fill="${LANE_COLORS.quiet}">${labels}</g>` +
    `<text x="${at(Math.min(x(asOf), right - 30))}" y="${at(bottom + 17)}" text-anchor="middle" font-size="11" font-weight="600" fill="${LANE_COLORS.ink}">${writeDay(asOf)}</text>`
  );
}
