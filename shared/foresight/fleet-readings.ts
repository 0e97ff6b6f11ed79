/**
 * A fleet's readings as the model takes them, flat and typed; rows sorted by unit, then day. Indices start at 0.
 * Everything is in points of one quantity: O2 at reference air for drift, pascals for the supply's drop.
 */
export interface FleetReadings {
  readonly rows: number;
  readonly unit: Int32Array;
  readonly lane: Int32Array;
  /** Days since 1970-01-01, fractions allowed. */
  readonly day: Float64Array;
  /** One of READING_STATE. */
  readonly state: Uint8Array;
  /** Whether the burner was adjusted at this visit at this fire: 1 yes, 0 no, -1 not known. */
  readonly adjusted: Int8Array;
  /** Equal codes within a unit and a fortnight are one visit; -1 falls back to the calendar day. */
  readonly visit: Int32Array;
  /** -1 where not named. */
  readonly analyzer: Int32Array;
  /** The reading by the first cell (O2), NaN where it has none. */
  readonly first: Float64Array;
  /** The reading by an independent second cell (measured CO2) in the first one's points, NaN where it has none. */
  readonly second: Float64Array;
  /** 1 where the level begins anew: the step that led there is no drift (gross-readings.ts); nowhere when left out. */
  readonly sudden?: Uint8Array | undefined;
  /** Variance that a guess about the day's air adds to all readings of the visit. */
  readonly extra: Float64Array;
  /**
   * What a technician who sets to the target would leave on that day, in the same points; NaN where no target is known.
   * Targets are set on the instrument as measured, so at reference air the aim differs from day to day.
   */
  readonly aim: Float64Array;
  /** Distance from the aim up to which a burner is left alone. */
  readonly tolerance: Float64Array;
  /**
   * Code of the gas zone and calendar month of the reading; -1 where no piped gas is burnt or a trim takes a change of the
   * gas out by itself.
   */
  readonly zoneMonth: Int32Array;
  readonly zoneMonths: number;
  readonly lanes: FleetLanes;
  readonly units: number;
  readonly analyzers: number;
  /** Of these, those at the end that stand for what an analyzer reads since it came to read otherwise. */
  readonly laterAnalyzers: number;
  readonly classes: number;
  readonly fuels: number;
  /** Per unit, ascending: days on which other hardware was fitted and a new series starts. */
  readonly breaks: readonly (readonly number[])[];
}

/** Lanes stand in the order of their units. */
export interface FleetLanes {
  readonly count: number;
  readonly unit: Int32Array;
  readonly classOf: Int32Array;
  readonly fuel: Int32Array;
  /** 1 where the aim is a CO2 target, told along the fuel's line. */
  readonly aimInCo2: Uint8Array;
}

export const READING_STATE = { found: 0, left: 1, unknown: 2, trial: 3 } as const;

/** A reading by its first cell, else by its second; NaN where it has neither. */
export const readingOf = ({ first, second }: FleetReadings, row: number): number =>
  Number.isFinite(first[row]) ? first[row] : second[row];
