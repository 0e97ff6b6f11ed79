import type { Lane } from './lane.ts';
import type { LaneSize } from './lane-frame.ts';

/** Where one lane lies on the paper. Heights follow the bands: all lanes of a unit share one scale. */
export interface LaneSlot {
  readonly lane: Lane;
  readonly top: number;
  readonly bottom: number;
  /** Position of a value; what lies beyond the slot is held at its border. */
  y(value: number): number;
  /** Whether a value had to be held at the border. */
  beyond(value: number): boolean;
}

interface Extent {
  readonly low: number;
  readonly high: number;
  /** Height of the band, or of what stands for it. */
  readonly band: number;
}

/** How far outside its band, in bands, a lane still shows where a reading lies. */
const SHOWN_BEYOND = 0.7;
/** Air above and below the band, in bands. */
const AIR = 0.16;
/** Points of O2 or CO2 that stand for a band where none is known. */
const BAND_UNKNOWN = 0.8;

function extentOf({ lower, upper, readings, path }: Lane): Extent {
  const values = [...readings.map(({ value }) => value), ...path.map(({ level }) => level)].filter(Number.isFinite);
  const known = upper > lower;
  const least = values.length > 0 ? Math.min(...values) : Number.NaN;
  const most = values.length > 0 ? Math.max(...values) : Number.NaN;
  if (!known) {
    const middle = values.length > 0 ? (least + most) / 2 : Number.isFinite(lower + upper) ? (lower + upper) / 2 : 0;
    const half = Math.max(values.length > 0 ? (most - least) * 0.6 : 0, BAND_UNKNOWN / 2);
    return { low: middle - half, high: middle + half, band: BAND_UNKNOWN };
  }
  const band = upper - lower;
  const air = AIR * band;
  const limit = SHOWN_BEYOND * band;
  return {
    low: Math.max(Math.min(lower - air, least - air / 2 || Number.POSITIVE_INFINITY), lower - limit),
    high: Math.min(Math.max(upper + air, most + air / 2 || Number.NEGATIVE_INFINITY), upper + limit),
    band,
  };
}

const SHAPE = {
  /** Mean height of a band; the gap between lanes; the head over a second fuel's set. */
  small: { slot: 30, gap: 3, head: 0 },
  large: { slot: 86, gap: 12, head: 22 },
} as const;

/** Height of the head over each set of lanes where a unit burns more than one fuel. */
export const fuelHead = (size: LaneSize): number => SHAPE[size].head;

/** Lanes below one another from `top` on, in the order given. */
export function slotsOf(lanes: readonly Lane[], size: LaneSize, top: number): LaneSlot[] {
  const { slot, gap, head } = SHAPE[size];
  const extents = lanes.map(extentOf);
  const total = extents.reduce((sum, { low, high }) => sum + high - low, 0);
  const scale = (slot * lanes.length) / total;
  const sets = new Set(lanes.map(({ fuel }) => fuel)).size;
  let at = top;
  return lanes.map((lane, index) => {
    if (sets > 1 && lane.fuel !== lanes[index - 1]?.fuel) at += head;
    const { low, high } = extents[index];
    const from = at;
    const to = from + (high - low) * scale;
    at = to + gap;
    return {
      lane,
      top: from,
      bottom: to,
      y: (value) => Math.min(Math.max(to - (value - low) * scale, from), to),
      beyond: (value) => value < low || value > high,
    };
  });
}
