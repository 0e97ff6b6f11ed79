import { escapeText } from '../markup/escape-text.ts';
import {
  describeLane,
  describeNoHistory,
  describeSupply,
  fireName,
  fuelName,
  lanesTitle,
  noBand,
  shortFireName,
  supplyName,
} from '../messages/lanes.ts';
import { writeDay } from '../quantities/dates.ts';
import { drawFlame } from './draw-flame.ts';
import { drawLane } from './draw-lane.ts';
import { drawSupplyLane } from './draw-supply-lane.ts';
import { drawTimeAxis } from './draw-time-axis.ts';
import type { Lane, SupplyLane, UnitLanes } from './lane.ts';
import { LANE_COLORS } from './lane-colors.ts';
import { frameOf, type LaneFrame, type LaneSize } from './lane-frame.ts';
import { fuelHead, type LaneSlot, slotsOf } from './lane-slots.ts';
import { at } from './svg-numbers.ts';

const MARGIN = {
  small: { top: 3, bottom: 3, supply: 16, gap: 4 },
  large: { top: 14, bottom: 24, supply: 52, gap: 16 },
} as const;

/**
 * A unit's fire lanes as one SVG element: high fire above low, each lane as tall as its band, as-found readings hollow
 * and as-left filled, the fit and its 95 % interval running on past the as-of day, a gate on the date at which leaving
 * the band becomes as likely as not, and the supply drop below on the same time axis. All text is escaped; colors come
 * from CSS custom properties (lane-colors.ts). Works inside HTML as it is; fonts are the surrounding page's.
 */
export function drawLanes(unit: UnitLanes, size: LaneSize): string {
  const frame = frameOf(unit, size);
  const margin = MARGIN[size];
  const slots = slotsOf(unit.lanes, size, margin.top);
  const lanesEnd = slots.at(-1)?.bottom ?? margin.top;
  const supplyTop = unit.supply ? lanesEnd + (slots.length > 0 ? margin.gap : 0) : lanesEnd;
  const bottom = supplyTop + (unit.supply ? margin.supply : 0);
  const height = bottom + margin.bottom;
  const empty = slots.length === 0 && !unit.supply;
  const body = empty
    ? ''
    : slots.map((slot, index) => drawLane(slot, frame) + drawName(slot, slots[index - 1], slots, frame)).join('') +
      (unit.supply
        ? drawSupplyLane(unit.supply, frame, supplyTop, margin.supply) +
          drawSupplyName(unit.supply, frame, supplyTop, margin.supply)
        : '') +
      drawTimeAxis(frame, margin.top - 2, bottom);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="fire-lanes" role="img" viewBox="0 0 ${frame.width} ${at(height)}" width="${frame.width}" height="${at(height)}" style="max-width:100%;height:auto;font-variant-numeric:tabular-nums" font-family="inherit" color="inherit">` +
    `<title>${escapeText(lanesTitle(unit.unit, unit.place))}</title><desc>${escapeText(describe(unit))}</desc>${body}</svg>`
  );
}

/** The same in words, for those who cannot see the picture. */
function describe({ unit, lanes, supply }: UnitLanes): string {
  const sentences = [...lanes.map(laneSentence), ...(supply ? [supplySentence(supply)] : [])];
  return sentences.length > 0 ? sentences.join(' ') : describeNoHistory(unit);
}

function laneSentence(lane: Lane): string {
  const days = lane.readings.map(({ day }) => day);
  const level = lane.path.filter(({ day }) => day <= lane.asOf).at(-1)?.level ?? Number.NaN;
  return describeLane({
    fire: lane.fire,
    fuel: lane.fuel,
    quantity: lane.quantity,
    readings: days.length,
    firstDay: days.length > 0 ? writeDay(Math.min(...days)) : '',
    lastDay: days.length > 0 ? writeDay(Math.max(...days)) : '',
    level,
    lower: lane.lower,
    upper: lane.upper,
    leavesOn: writeDay(lane.leavesOn),
  });
}

function supplySentence({ readings, limitPa }: SupplyLane): string {
  const last = readings.reduce((latest, reading) => (reading.day >= latest.day ? reading : latest));
  return describeSupply(readings.length, last.dropPa, writeDay(last.day), limitPa);
}

/** The flame beside the name is as tall as the fire: a picture of the word, not a second meaning. */
function drawName(slot: LaneSlot, above: LaneSlot | undefined, slots: readonly LaneSlot[], frame: LaneFrame): string {
  const { lane, top, bottom, y } = slot;
  const middle = lane.upper > lane.lower ? (y(lane.upper) + y(lane.lower)) / 2 : (top + bottom) / 2;
  const name = escapeText(frame.size === 'small' ? shortFireName(lane.fire) : fireName(lane.fire));
  if (frame.size === 'small')
    return `<text x="${frame.left - 4}" y="${at(middle + 3.5)}" text-anchor="end" font-size="10" fill="${LANE_COLORS.ink}">${name}</text>`;
  const sets = new Set(slots.map((other) => other.lane.fuel)).size;
  const head =
    sets > 1 && lane.fuel !== above?.lane.fuel
      ? `<text x="0" y="${at(top - fuelHead('large') + 14)}" font-size="12" font-weight="600" fill="${LANE_COLORS.ink}">${escapeText(fuelName(lane.fuel))}</text>`
      : '';
  const quantity = lane.quantity === 'o2_pct' ? 'O2 %' : 'CO2 %';
  return (
    head +
    drawFlame(lane.fire, 11, middle + 9) +
    `<text x="26" y="${at(middle)}" font-size="14" font-weight="600" fill="${LANE_COLORS.ink}">${name}</text>` +
    `<text x="26" y="${at(middle + 14)}" font-size="11" fill="${LANE_COLORS.quiet}">${quantity}</text>` +
    drawLimits(slot, frame, middle)
  );
}

function drawLimits({ lane, y }: LaneSlot, { left }: LaneFrame, middle: number): string {
  if (!(lane.upper > lane.lower))
    return `<text x="26" y="${at(middle + 27)}" font-size="11" fill="${LANE_COLORS.quiet}">${escapeText(noBand())}</text>`;
  return [lane.upper, lane.lower]
    .map(
      (limit) =>
        `<text x="${left - 6}" y="${at(y(limit) + 4)}" text-anchor="end" font-size="11" fill="${LANE_COLORS.ink}">${limit.toFixed(2)}</text>`,
    )
    .join('');
}

function drawSupplyName(supply: SupplyLane, { size, left }: LaneFrame, top: number, height: number): string {
  if (size === 'small')
    return `<text x="${left - 4}" y="${at(top + height / 2 + 3)}" text-anchor="end" font-size="10" fill="${LANE_COLORS.ink}">gas</text>`;
  const limit = Number.isFinite(supply.limitPa)
    ? `<text x="26" y="${at(top + 31)}" font-size="11" fill="${LANE_COLORS.quiet}">limit ${supply.limitPa.toFixed(0)} Pa</text>`
    : '';
  return `<text x="26" y="${at(top + 16)}" font-size="13" font-weight="600" fill="${LANE_COLORS.ink}">${escapeText(supplyName())}</text>${limit}`;
}
