import type { CellResult } from '../cell.ts';
import type { SpreadEstimate } from './estimate-spread.ts';
import type { LooseStates } from './heavy-tails.ts';
import type { Hardware } from './lane-keys.ts';
import type { LaneName } from './lane-name.ts';
import type { LaneSeries } from './lane-series.ts';
import type { LaneTrace } from './trace-lanes.ts';

/** What the fit knows, before any band or horizon: levels and rates in points of O2 at reference air. */
export interface FittedDrift extends CellResult {
  readonly lanes: readonly FittedLane[];
  readonly states: LooseStates;
  readonly series: LaneSeries;
  /** Per lane: the day of the visit since which it drifts as it does now; NaN where it always did. */
  readonly began: Float64Array;
  readonly estimate: SpreadEstimate;
  readonly trace: LaneTrace;
  readonly readings: FittedReadings;
  /** Readings left out of the fit as gross. */
  readonly gross: number;
  /** Readings that a level begins with anew, since no drift leads to them (gross-readings.ts). */
  readonly sudden: number;
  /** Months of gas zones that enough units share, whether or not they were found to differ. */
  readonly gasMonths: number;
  readonly referenceAir: boolean;
  /** The fit as measured where this one is at reference air, and the other way round; undefined where nothing differs. */
  readonly other: OtherAir | undefined;
  readonly asOf: number;
}

/** The lanes fitted to the readings in the other air: all, in the same order, or of a large fleet those of some units. */
export interface OtherAir extends Pick<FittedDrift, 'lanes' | 'states' | 'series' | 'estimate'> {
  readonly units: number;
}

export interface FittedLane extends LaneName, Hardware {
  readonly co2maxPct: number;
  /** The fleet's offset of measured CO2 in O2 points; 0 where the lane's CO2 is calculated. */
  readonly offsetO2: number;
  /** Median of the last three as-left readings of the series, in O2 points; NaN without any. */
  readonly leftO2: number;
  /** Of the level, in points of O2 squared, by an air temperature that was assumed; see assumedAirVariance. */
  readonly airVariance: number;
}

/** Per reading that the model was offered: its lane, its row in the readings table, whether it was taken. */
export interface FittedReadings {
  readonly lane: Int32Array;
  readonly sourceRow: Int32Array;
  readonly used: Uint8Array;
}
