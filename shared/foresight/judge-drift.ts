import { noReadingsSince, retiredOn, tooFewVisits } from '../messages/foresight.ts';
import { writeDay } from '../quantities/dates.ts';
import { studentQuantile } from '../statistics/student.ts';
import type { Table } from '../table/table.ts';
import { type BandQuestion, bandOfLane, type LaneBand } from './band-of-lane.ts';
import { co2PerO2, o2AsCo2 } from './co2-line.ts';
import type { DefaultBand } from './default-bands.ts';
import type { FittedDrift, FittedLane } from './fitted-drift.ts';
import { type JudgedLane, judgeLane } from './judge-lane.ts';
import { hardwareOf } from './lane-keys.ts';
import { type LaneLimits, limitsByUnit, limitsOfLane } from './lane-limits.ts';
import type { LaneName } from './lane-name.ts';
import type { LevelState } from './leaving-chance.ts';
import { retirements } from './retirements.ts';
import { eventDays, NEW_SERIES_EVENTS } from './series-breaks.ts';

export interface JudgeOptions {
  readonly horizonDays: number;
  readonly quantity: 'as_target' | 'o2_pct' | 'co2_pct';
  readonly bands: readonly DefaultBand[];
  /** False where only chances are wanted. */
  readonly dates?: boolean;
}

export interface JudgeTables {
  readonly limits: Table | undefined;
  readonly units: Table | undefined;
  readonly events: Table | undefined;
}

/** A lane as judged: its fit in the quantity of its target. Lanes of the register without readings have lane -1. */
export interface DriftRow extends LaneName {
  /** Number of the fitted lane, -1 where the register names a lane that has no reading. */
  readonly lane: number;
  readonly band: LaneBand;
  readonly state: LevelState;
  readonly judged: JudgedLane;
  readonly horizon: number;
  readonly slopeLower: number;
  readonly slopeUpper: number;
  readonly slopeSource: string;
  /** Turns O2 points into the quantity's. */
  readonly fromO2: (o2: number) => number;
}

const NOTHING: LevelState = {
  level: Number.NaN,
  rate: Number.NaN,
  levelVariance: Number.NaN,
  rateVariance: Number.NaN,
  covariance: Number.NaN,
  wander: Number.NaN,
  rateWander: Number.NaN,
};

/**
 * Judges every lane of the fit and every lane that the register names; sorted by unit, fuel and fire. `judge` is asked
 * once for each lane of the fit, in their order, so that the judging may be done elsewhere; `kept` gives a lane's row where
 * it is known to be the same as before.
 */
export function judgeDrift(
  fitted: FittedDrift,
  tables: JudgeTables,
  options: JudgeOptions,
  judge: typeof judgeLane = judgeLane,
  kept: (lane: number) => DriftRow | undefined = () => undefined,
): DriftRow[] {
  const { limits, retired, changed, deviations, noChance, unread } = groundsOf(fitted, tables);
  const rows = fitted.lanes.map(
    (lane, index) =>
      kept(index) ??
      judgeFitted(
        fitted,
        lane,
        index,
        limits.get(lane.unit) ?? [],
        options,
        retired,
        changed,
        deviations,
        noChance(index),
        judge,
      ),
  );
  for (const lane of unread) {
    const entries = limits.get(lane.unit) ?? [];
    rows.push(withoutReadings(lane, limitsOfLane(entries, lane, options.quantity), fitted.asOf, options, retired));
  }
  return rows.sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
}

/** What judging needs of a fit and the tables beside it, whatever the horizon and the usual bands. */
interface Grounds {
  readonly limits: ReadonlyMap<string, readonly LaneLimits[]>;
  readonly retired: ReadonlyMap<string, number>;
  readonly changed: ReadonlyMap<string, readonly number[]>;
  readonly deviations: number;
  readonly noChance: (lane: number) => string;
  /** Lanes that the register names and nobody has read. */
  readonly unread: readonly UnreadLane[];
}

type UnreadLane = Omit<BandQuestion, 'co2maxPct' | 'left' | 'quantity'> & LaneName;

/** The last grounds of the lanes of a fit. */
const lastGrounds = new WeakMap<FittedDrift['lanes'], { readonly of: JudgeTables; readonly grounds: Grounds }>();

function groundsOf(fitted: FittedDrift, tables: JudgeTables): Grounds {
  const { limits, units, events } = tables;
  const last = lastGrounds.get(fitted.lanes);
  if (last && last.of.limits === limits && last.of.units === units && last.of.events === events) return last.grounds;
  const entries = limitsByUnit(limits, fitted.asOf);
  const grounds = {
    limits: entries,
    retired: retirements(tables, fitted.asOf),
    changed: eventDays(events, NEW_SERIES_EVENTS, fitted.asOf),
    deviations: ninetyFive(fitted),
    noChance: chanceless(fitted),
    unread: unreadLanes(fitted, entries, units),
  };
  lastGrounds.set(fitted.lanes, { of: { limits, units, events }, grounds });
  return grounds;
}

function unreadLanes(
  { lanes }: FittedDrift,
  limits: ReadonlyMap<string, readonly LaneLimits[]>,
  units: Table | undefined,
): UnreadLane[] {
  const known = new Set(lanes.map(keyOf));
  const lanesOfUnit = new Map<string, LaneName[]>();
  for (const lane of lanes) {
    const own = lanesOfUnit.get(lane.unit);
    if (own) own.push(lane);
    else lanesOfUnit.set(lane.unit, [lane]);
  }
  const hardware = hardwareOf(units);
  const unread: UnreadLane[] = [];
  for (const [unit, entries] of limits) {
    for (const entry of entries) {
      const isFitted = lanesOfUnit.get(unit)?.some((row) => limitsOfLane([entry], row, 'as_target')) ?? false;
      if (isFitted || known.has(keyOf(entry))) continue;
      known.add(keyOf(entry));
      unread.push({ unit, fuel: entry.fuel, fire: entry.fire, ...hardware(unit, entry.fuel) });
    }
  }
  return unread;
}

const keyOf = ({ unit, fuel, fire }: LaneName): string => `${unit}\u0000${fuel}\u0000${fire}`;

function judgeFitted(
  fitted: FittedDrift,
  lane: FittedLane,
  index: number,
  limits: readonly LaneLimits[],
  options: JudgeOptions,
  retired: ReadonlyMap<string, number>,
  changed: ReadonlyMap<string, readonly number[]>,
  deviations: number,
  noChance: string,
  judge: typeof judgeLane,
): DriftRow {
  const { asOf, series } = fitted;
  const found = limitsOfLane(limits, lane, options.quantity);
  const quantity = options.quantity === 'as_target' ? (found?.quantity ?? 'o2_pct') : options.quantity;
  const inCo2 = quantity === 'co2_pct';
  const factor = inCo2 ? co2PerO2(lane) : 1;
  const fromO2 = inCo2 ? (o2: number): number => o2AsCo2(o2, lane) : (o2: number): number => o2;
  const band = bandOfLane(
    { ...lane, left: fromO2(lane.leftO2), quantity },
    sameQuantity(found, quantity),
    options.bands,
  );
  const spoken = series.readings[index] > 0;
  const fitState = spoken ? stateIn(fitted, index, inCo2, fromO2, factor) : NOTHING;
  const rated = spoken && noChance === '';
  const state = rated ? fitState : { ...fitState, rate: Number.NaN };
  const horizon = asOf + options.horizonDays;
  const reason = reasonAgainst(lane.unit, spoken, retired, changed);
  const judged = judge(
    { state: fitState, lastVisit: series.to[index], asOf, horizon, reason, noChance, dates: options.dates ?? true },
    band,
  );
  const half = deviations * Math.sqrt(state.rateVariance);
  return {
    unit: lane.unit,
    fuel: lane.fuel,
    fire: lane.fire,
    lane: index,
    band,
    state,
    judged,
    horizon,
    slopeLower: state.rate - half * (factor < 0 ? fitted.states.rateAbove : fitted.states.rateBelow)[index],
    slopeUpper: state.rate + half * (factor < 0 ? fitted.states.rateBelow : fitted.states.rateAbove)[index],
    slopeSource: rated ? sourceOf(fitted.states.ownWeight[index]) : '',
    fromO2,
  };
}

/**
 * Half-width of a 95 % interval in standard deviations. The variances are estimated from as many rates as there are lanes,
 * less one a class: Student's t pays for that in a small fleet, and is the normal's in a large one.
 */
function ninetyFive({ lanes }: FittedDrift): number {
  const classes = new Set(lanes.map(({ burner, control, fuel, fire }) => [burner, control, fuel, fire].join('\u0000')));
  return studentQuantile(0.975, Math.max(3, lanes.length - classes.size));
}

/** Intervals in the whole fleet, from a visit to what the next found, below which no class can speak for a lane that has none of its own. */
const LEAST_CLASS_INTERVALS = 10;
/** Intervals in the whole fleet below which nothing can be told of any rate. */
const LEAST_INTERVALS = 2;

/** Why no rate, and so no chance, is known of a lane: too few intervals that tell of one, its own or the fleet's. */
function chanceless({ series }: FittedDrift): (lane: number) => string {
  const intervals = series.intervals.reduce((sum, own) => sum + own, 0);
  return (lane) => {
    const least = series.intervals[lane] < 1 ? LEAST_CLASS_INTERVALS : LEAST_INTERVALS;
    return intervals < least ? tooFewVisits(series.visits[lane], intervals, least) : '';
  };
}

const sameQuantity = (limits: LaneLimits | undefined, quantity: string): LaneLimits | undefined =>
  limits?.quantity === quantity ? limits : undefined;

function stateIn(
  fitted: FittedDrift,
  lane: number,
  inCo2: boolean,
  fromO2: (o2: number) => number,
  factor: number,
): LevelState {
  const { states, estimate, lanes } = fitted;
  const square = factor * factor;
  // A CO2 lane is told with the offset of measured CO2 added to its level.
  const added = inCo2 ? 1 : 0;
  return {
    level: fromO2(states.level[lane]),
    rate: states.rate[lane] * factor,
    levelVariance:
      Math.max(1e-6, states.levelVariance[lane] + added * states.offsetVariance[lane] + lanes[lane].airVariance) *
      square,
    rateVariance: states.rateVariance[lane] * square,
    covariance: (states.covariance[lane] + added * states.offsetCovariance[lane]) * square,
    wander: estimate.spread.wander * Math.abs(factor),
    rateWander: estimate.spread.rateWander * Math.abs(factor),
  };
}

function reasonAgainst(
  unit: string,
  spoken: boolean,
  retired: ReadonlyMap<string, number>,
  changed: ReadonlyMap<string, readonly number[]>,
): string {
  const gone = retired.get(unit);
  if (gone !== undefined) return retiredOn(writeDay(gone));
  const fitted = changed.get(unit);
  return !spoken && fitted ? noReadingsSince(writeDay(fitted[fitted.length - 1])) : '';
}

function withoutReadings(
  lane: UnreadLane,
  limits: LaneLimits | undefined,
  asOf: number,
  options: JudgeOptions,
  retired: ReadonlyMap<string, number>,
): DriftRow {
  const quantity = options.quantity === 'as_target' ? (limits?.quantity ?? 'o2_pct') : options.quantity;
  const question = { ...lane, co2maxPct: Number.NaN, left: Number.NaN, quantity };
  const band = bandOfLane(question, sameQuantity(limits, quantity), options.bands);
  const horizon = asOf + options.horizonDays;
  const reason = reasonAgainst(lane.unit, false, retired, new Map());
  return {
    unit: lane.unit,
    fuel: lane.fuel,
    fire: lane.fire,
    lane: -1,
    band,
    state: NOTHING,
    judged: judgeLane(
      { state: NOTHING, lastVisit: Number.NaN, asOf, horizon, reason, noChance: '', dates: false },
      band,
    ),
    horizon,
    slopeLower: Number.NaN,
    slopeUpper: Number.NaN,
    slopeSource: '',
    fromO2: (o2) => o2,
  };
}

/** own where the unit's own data weigh at least 0.8, class where at most 0.2, else pooled. */
export const sourceOf = (weight: number): string => (weight >= 0.8 ? 'own' : weight <= 0.2 ? 'class' : 'pooled');
