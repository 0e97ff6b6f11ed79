/**
 * The model's hyperparameters: standard deviations unless said otherwise, in points of the modelled quantity (O2 for drift, pascals for
 * supply) and years. Estimated by restricted maximum likelihood, see estimate-spread.ts.
 */
export interface Spread {
  /** Repeatability of a reading. */
  readonly reading: number;
  /** The same for the second cell (measured CO2, in O2 points). */
  readonly secondReading: number;
  /**
   * What the two cells of one reading share beyond the visit's effect: a flue gas not quite settled. 0 where no reading has
   * both: with one cell it is part of `reading`.
   */
  readonly settling: number;
  /** Effect of a visit that all its readings share. */
  readonly visit: number;
  /** Wandering of a level after one year. */
  readonly wander: number;
  /** Rates of units about their class's mean, per year. */
  readonly rate: number;
  /** Change of a unit's own rate after one year, per year: a linkage that begins to wear. */
  readonly rateWander: number;
  /** Analyzer biases. */
  readonly analyzer: number;
  readonly secondAnalyzer: number;
  /** Jump at a visit that may have adjusted without saying so, the burner being found within its setting tolerance. */
  readonly unrecorded: number;
  /** A level just adjusted about what the as-left reading and the technician's aim together tell. */
  readonly left: number;
  /** Share, 0 to 1, of an as-left reading's distance from the aim that is real; the rest is the reading's noise. */
  readonly leftShare: number;
  /**
   * Share, 0 to 1, of what the instrument and the visit add to a reading that goes into the setting as well: 1 where crews
   * set until the display shows the aim, 0 where the burner itself comes to stand at it.
   */
  readonly byDisplay: number;
  /** Share, 0 to 1, of the distance from the aim that stays at such a visit when found outside the setting tolerance. */
  readonly kept: number;
  /**
   * How large the error of bringing readings to reference air is, over what the derivation says: 1 as large. Burners follow
   * the air's density more nearly alike than one could know of a single burner, or less so.
   */
  readonly air: number;
  /** What a gas zone's month adds to all its readings: heating value, weather; 0 where none is shown. */
  readonly zone: number;
  /** Mean rates of classes about the fleet's, per year. */
  readonly classRate: number;
}

export const SPREAD_NAMES = [
  'reading',
  'secondReading',
  'settling',
  'visit',
  'wander',
  'rate',
  'rateWander',
  'analyzer',
  'secondAnalyzer',
  'unrecorded',
  'left',
  'leftShare',
  'byDisplay',
  'kept',
  'air',
  'zone',
  'classRate',
] as const satisfies readonly (keyof Spread)[];

/** Those that are shares: estimated by their logit, the others by their logarithm. */
export const SHARES: ReadonlySet<keyof Spread> = new Set(['leftShare', 'byDisplay', 'kept']);

export type SpreadName = (typeof SPREAD_NAMES)[number];

/** What is believed before any reading: a typical value, and how many times larger or smaller is still one deviation away. */
export interface SpreadPrior {
  readonly typical: Spread;
  /** Standard deviation of the natural logarithm (of the logit for shares). */
  readonly logSd: number;
  /** Standard deviations of what has no estimate of its own: the fleet's mean rate, and a fuel's offset. */
  readonly fleetRate: number;
  readonly offset: number;
  /**
   * The same for what crews leave beyond their aim, O2 targets and CO2 targets: by the display next to nothing, but a fuel's
   * line of CO2 may be off. Without it a bias that all analyzers share would be told by what they show at the aim.
   */
  readonly aims: readonly [number, number];
  /** Sizes, per year, of a change of rate that the readings are asked for; none where rates are taken to stay. */
  readonly bends: readonly number[];
}

/** Trade experience in points of O2: repeatability 0.1-0.2, analyzers alike within 0.3, a few tenths of drift a year. */
export const DRIFT_PRIOR: SpreadPrior = {
  typical: {
    reading: 0.15,
    secondReading: 0.2,
    settling: 0.05,
    visit: 0.12,
    wander: 0.2,
    rate: 0.25,
    rateWander: 0.01,
    analyzer: 0.15,
    secondAnalyzer: 0.2,
    unrecorded: 0.15,
    left: 0.15,
    leftShare: 0.7,
    byDisplay: 0.8,
    kept: 0.5,
    air: 1,
    zone: 0,
    classRate: 0.15,
  },
  logSd: 1,
  fleetRate: 1,
  offset: 0.7,
  aims: [0.05, 0.3],
  bends: [0.6, 0.3, 1.2],
};

/** The supply's drop, in pascals: a manometer repeats within a few pascals, other loads on the line add as much again. */
export const SUPPLY_PRIOR: SpreadPrior = {
  typical: {
    reading: 10,
    secondReading: 10,
    settling: 0,
    visit: 1e-3,
    wander: 3,
    rate: 6,
    rateWander: 0.5,
    analyzer: 1e-3,
    secondAnalyzer: 1e-3,
    unrecorded: 1e-3,
    left: 1,
    leftShare: 0.7,
    byDisplay: 0.8,
    kept: 0.5,
    air: 1,
    zone: 0,
    classRate: 3,
  },
  logSd: 1,
  fleetRate: 20,
  offset: 1,
  aims: [1, 1],
  bends: [],
};
