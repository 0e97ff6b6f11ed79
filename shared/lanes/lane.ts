/**
 * The fire lanes: how a unit is always shown. One lane a fire point (high above low), one set a fuel; the supply drop
 * under them on the same time axis. Plain data; draw-lanes.ts turns it into a picture.
 * Days count from 1970-01-01; unknown numbers are NaN.
 */
export interface UnitLanes {
  readonly unit: string;
  /** Building and site as the register gives them, '' where unknown. */
  readonly place: string;
  readonly lanes: readonly Lane[];
  readonly supply?: SupplyLane;
}

export interface Lane {
  readonly fuel: string;
  readonly fire: string;
  readonly quantity: 'o2_pct' | 'co2_pct';
  readonly target: number;
  readonly lower: number;
  readonly upper: number;
  readonly readings: readonly LaneReading[];
  /** The fitted level with its 95 % interval, running on to the horizon. */
  readonly path: readonly LanePathPoint[];
  /** The day on which the chance of having left the band reaches 50 %; NaN when not within reach. */
  readonly leavesOn: number;
  readonly asOf: number;
  readonly horizon: number;
}

export interface LaneReading {
  readonly day: number;
  /** At reference air, as judged. */
  readonly value: number;
  /** As the instrument showed it. */
  readonly asMeasured: number;
  readonly state: string;
}

export interface LanePathPoint {
  readonly day: number;
  readonly level: number;
  readonly lower: number;
  readonly upper: number;
}

export interface SupplyLane {
  readonly limitPa: number;
  readonly readings: readonly { readonly day: number; readonly dropPa: number }[];
  readonly path: readonly LanePathPoint[];
}
