/**
 * A fleet's history as the filter reads it: for each unit a list of steps in order of time, flat and typed.
 *
 * A unit has lanes (fuel and fire). Each lane has a level x and a rate d; all lanes of a unit share the effect v of the
 * visit. What the whole fleet shares is a column: an analyzer's bias, a class's mean rate, a fuel's offset.
 */
export interface FleetProgram {
  readonly units: number;
  /** First step of each unit; one entry more than units. Likewise below. */
  readonly unitSteps: Int32Array;
  readonly unitLanes: Int32Array;
  readonly unitColumns: Int32Array;
  /** Shared columns of a unit, in the order in which its steps first need them: index into the fleet's columns. */
  readonly columns: Int32Array;
  /** Per lane: place of its class's mean rate among its unit's columns. */
  readonly laneClass: Int32Array;
  /** Per lane: place of the offset of its second cell among its unit's columns, -1 where its unit has no such reading. */
  readonly laneOffset: Int32Array;
  readonly kind: Uint8Array;
  /** Place of the lane within its unit. */
  readonly lane: Uint8Array;
  /** `visit`: years since the unit's last visit. `read`, `set`, `left`: the reading, in points. `aim`: the aim. */
  readonly value: Float64Array;
  /**
   * `visit`: variance of the visit's effect beyond the fleet's own (air temperature guessed). `left`: the aim, NaN where
   * none is known. `read`: 1 where it is the second cell of the reading whose first the step before holds. `widen`: variance beyond the fleet's own. `aim`: 1 where an adjustment is recorded.
   */
  readonly extra: Float64Array;
  /** Readings: which instrument cell (0 the target's, 1 the other). `visit`: 1 where the analyzer is not named. */
  readonly cell: Uint8Array;
  /**
   * Readings and `aim`: places of the shared columns that add to a reading, -1 for none; the offset of a first cell's `left`
   * and of an `aim` is what crews leave beyond their aim. `visit`: that of its zone and month.
   */
  readonly biasColumn: Int32Array;
  readonly offsetColumn: Int32Array;
  readonly shared: SharedColumns;
}

/** How many shared columns of each sort there are; they stand in this order. */
export interface SharedColumns {
  readonly analyzers: number;
  readonly secondAnalyzers: number;
  /** Of both, the last so many are what an analyzer came to read: anything. */
  readonly laterAnalyzers: number;
  readonly classes: number;
  readonly offsets: number;
  /** What crews leave a burner at beyond their aim, two a fuel: O2 targets, then CO2 targets told along the fuel's line. */
  readonly aims: number;
  /** Gas zones by months that enough units share; in a unit's own list they stand last. */
  readonly zoneMonths: number;
}

/** Where each sort of shared columns begins. */
export const columnStarts = (shared: SharedColumns): Readonly<Record<'classes' | 'offsets' | 'aims', number>> => {
  const classes = shared.analyzers + shared.secondAnalyzers;
  const offsets = classes + shared.classes;
  return { classes, offsets, aims: offsets + shared.offsets };
};

/** Where the months of the gas zones begin. */
export const columnsBeforeZones = (shared: SharedColumns): number =>
  shared.analyzers + shared.secondAnalyzers + shared.classes + shared.offsets + shared.aims;

export const columnsOf = (shared: SharedColumns): number => columnsBeforeZones(shared) + shared.zoneMonths;

/** What a step does. */
export const STEP = {
  /** Time passes, then a visit begins: a fresh visit effect. */
  visit: 0,
  /** A reading of the level as it is. */
  read: 1,
  /** The first reading of a level of which nothing is known, at a series' start. */
  set: 2,
  /** The level may have been moved without a record. */
  widen: 3,
  /** Other hardware from here: a new rate, a level of which nothing is known (a `set` follows). */
  renew: 4,
  /** The first as-left reading after an adjustment: the level starts anew from it. */
  left: 5,
  /** An adjustment without an as-left reading, recorded or suspected: the level moves toward the aim. */
  aim: 6,
  /** The lane's rate changes, by a normal amount of the deviation in `value`. */
  bend: 7,
} as const;
