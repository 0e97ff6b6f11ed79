import { escapeText } from '../markup/escape-text.ts';
import { writeDay } from '../quantities/dates.ts';
import { drawPath } from './draw-path.ts';
import { LANE_COLORS } from './lane-colors.ts';
import type { LaneFrame } from './lane-frame.ts';
import type { LaneSlot } from './lane-slots.ts';
import { at } from './svg-numbers.ts';

/** One lane: the band, the fit and its interval, the visits, and where it leaves. */
export function drawLane(slot: LaneSlot, frame: LaneFrame): string {
  return [drawBand(slot, frame), drawFit(slot, frame), drawVisits(slot, frame), drawLeaving(slot, frame)].join('');
}

function drawBand({ lane, y }: LaneSlot, { left, right, x, asOf, size }: LaneFrame): string {
  const { lower, upper, target } = lane;
  if (!(upper > lower)) return '';
  const [top, bottom] = [y(upper), y(lower)];
  const edges = [top, bottom].map((edge) => `M${at(left)} ${at(edge)}H${at(right)}`).join('');
  const aim = Number.isFinite(target)
    ? `<path d="M${at(left)} ${at(y(target))}H${at(right)}" stroke="${LANE_COLORS.edge}" stroke-width=".8" stroke-dasharray="1 4" fill="none"/>`
    : '';
  return (
    `<rect x="${at(left)}" y="${at(top)}" width="${at(x(asOf) - left)}" height="${at(bottom - top)}" fill="${LANE_COLORS.band}"/>` +
    `<rect x="${at(x(asOf))}" y="${at(top)}" width="${at(right - x(asOf))}" height="${at(bottom - top)}" fill="${LANE_COLORS.band}" fill-opacity=".55"/>` +
    `<path d="${edges}" stroke="${LANE_COLORS.edge}" stroke-width="${size === 'large' ? 1.2 : 0.9}" fill="none"/>${aim}`
  );
}

/** The fit up to the last day it is given for; from the as-of day on it is broken, since nothing was seen there. */
function drawFit({ lane, y }: LaneSlot, { x, asOf, size, lastDay }: LaneFrame): string {
  const points = lane.path.filter(({ day }) => day <= lastDay);
  if (points.length < 2) return '';
  return drawPath(points, x, y, asOf, {
    line: LANE_COLORS.fit,
    lineWidth: size === 'large' ? 1.8 : 1.3,
    spread: LANE_COLORS.spread,
    spreadOpacity: 0.26,
    dash: '5 3',
  });
}

/** Hollow as found, filled as left, a stem between them; a small cross where the state is not known or a trial. */
function drawVisits(slot: LaneSlot, { x, size }: LaneFrame): string {
  const { lane, y } = slot;
  const radius = size === 'large' ? 3.6 : 2.3;
  const of = (state: string) => lane.readings.filter((reading) => reading.state === state);
  const [found, left] = [of('as_found'), of('as_left')];
  const others = lane.readings.filter(({ state }) => state !== 'as_found' && state !== 'as_left');
  const stems = found.flatMap((reading) => {
    const after = left.find(({ day }) => Math.floor(day) === Math.floor(reading.day));
    return after ? [`M${at(x(reading.day))} ${at(y(reading.value))}V${at(y(after.value))}`] : [];
  });
  const dots = (readings: typeof found): string =>
    readings
      .map(({ day, value }) =>
        slot.beyond(value)
          ? heldAtBorder(x(day), y(value), value > lane.upper, radius)
          : `<circle cx="${at(x(day))}" cy="${at(y(value))}" r="${radius}"/>`,
      )
      .join('');
  const crosses = others.map(({ day, value }) => `M${at(x(day) - 2)} ${at(y(value) - 2)}l4 4m0-4l-4 4`).join('');
  const group = (attributes: string, content: string): string => (content ? `<g ${attributes}>${content}</g>` : '');
  const ink = LANE_COLORS.ink;
  return (
    weather(slot, x, size) +
    (stems.length > 0 ? `<path d="${stems.join('')}" stroke="${ink}" stroke-width=".9" fill="none"/>` : '') +
    (crosses ? `<path d="${crosses}" stroke="${ink}" stroke-width="1" fill="none"/>` : '') +
    group(`fill="${ink}" stroke="${ink}" stroke-width="1"`, dots(left)) +
    group(`fill="${LANE_COLORS.paper}" stroke="${ink}" stroke-width="1.2"`, dots(found))
  );
}

/** A reading outside the drawn range: an arrowhead at the border, pointing to where it lies. */
function heldAtBorder(x: number, y: number, above: boolean, radius: number): string {
  const [base, tip] = above ? [y + radius * 2, y] : [y - radius * 2, y];
  return `<path d="M${at(x - radius)} ${at(base)}L${at(x)} ${at(tip)}L${at(x + radius)} ${at(base)}Z"/>`;
}

/** A dotted thread from the value at reference air to what the analyzer showed that day: the weather's part. */
function weather({ lane, y }: LaneSlot, x: (day: number) => number, size: LaneFrame['size']): string {
  if (size === 'small') return '';
  const shown = lane.readings.filter(({ asMeasured, value }) => Math.abs(asMeasured - value) > 0.02);
  const threads = shown.map(({ day, value, asMeasured }) => `M${at(x(day))} ${at(y(value))}V${at(y(asMeasured))}`);
  const ends = shown.map(({ day, asMeasured }) => `M${at(x(day) - 1.4)} ${at(y(asMeasured))}h2.8`);
  return shown.length === 0
    ? ''
    : `<path d="${threads.join('')}" stroke="${LANE_COLORS.quiet}" stroke-width="1" stroke-dasharray="1 2.5" fill="none"/>` +
        `<path d="${ends.join('')}" stroke="${LANE_COLORS.quiet}" stroke-width="2.8" fill="none"/>`;
}

/** A gate across the edge through which the level leaves, with its date. */
function drawLeaving({ lane, y }: LaneSlot, { x, size, lastDay, left, right }: LaneFrame): string {
  const { leavesOn, lower, upper, path } = lane;
  if (!Number.isFinite(leavesOn) || leavesOn > lastDay || !(upper > lower)) return '';
  const near = path.filter(({ day }) => day <= leavesOn).at(-1) ?? path[0];
  const above = near ? near.level > (lower + upper) / 2 : false;
  const edge = y(above ? upper : lower);
  const [reach, half] = size === 'large' ? [13, 5] : [6, 3];
  const tip = above ? edge - reach : edge + reach;
  const px = x(leavesOn);
  const marker =
    `<path d="M${at(px)} ${at(edge + (above ? reach : -reach))}V${at(tip)}" stroke="${LANE_COLORS.leaving}" stroke-width="1.6" fill="none"/>` +
    `<path d="M${at(px - half)} ${at(edge)}h${at(half * 2)}L${at(px)} ${at(tip)}Z" fill="${LANE_COLORS.leaving}"/>`;
  if (size === 'small') return marker;
  const toLeft = px > (left + right * 2) / 3;
  return `${marker}<text x="${at(px + (toLeft ? -8 : 8))}" y="${at(above ? edge - 4 : edge + 12)}" text-anchor="${toLeft ? 'end' : 'start'}" font-size="11" font-weight="600" fill="${LANE_COLORS.leaving}" stroke="${LANE_COLORS.paper}" stroke-width="3" paint-order="stroke">${escapeText(writeDay(leavesOn))}</text>`;
}
