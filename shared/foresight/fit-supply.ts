import { atOnce, type Pieces } from '../pieces.ts';
import type { LaneStates } from './fit-fleet.ts';
import { type FleetFit, fittingModel } from './fit-model.ts';
import { fitLanePasses, tracePasses } from './fleet-passes.ts';
import { type FleetReadings, READING_STATE } from './fleet-readings.ts';
import { growthBegan } from './late-growth.ts';
import { SUPPLY_PRIOR } from './spread.ts';
import { scaleOf, type UnitSupply } from './supply-readings.ts';
import type { LaneTrace } from './trace-lanes.ts';

export interface FittedSupply {
  readonly fit: FleetFit;
  /** Level and rate by the unit's own drops alone, the class left out: what growth is tested on. */
  readonly own: LaneStates;
  /** The level at every visit by the unit's own drops, one lane a unit. */
  readonly trace: LaneTrace;
  /** Per unit: pascals that stand for one in the model. */
  readonly scale: readonly number[];
}

const SAMPLE = 600;
const UNITS_A_PIECE = 256;
/** Standard deviation of rates, in pascals a year, at which the class has no say: a whole limit in a month. */
const ANY_RATE = 3000;

/** Days on which a unit's drop starts anew: told events, and the day from which it began to grow since the last of them. */
function startsOf(unit: UnitSupply, told: readonly number[]): readonly number[] {
  const since = told.at(-1) ?? Number.NEGATIVE_INFINITY;
  const from = unit.days.findIndex((day) => day >= since);
  const began =
    from < 0 ? undefined : growthBegan({ ...unit, days: unit.days.slice(from), drop: unit.drop.slice(from) });
  return began === undefined ? told : [...told, began];
}

/** Drops of all units as one fleet: each grows at its own rate, pooled toward the fleet's; resets at the given days. */
export function fitSupply(
  units: readonly UnitSupply[],
  breaks: ReadonlyMap<string, readonly number[]>,
  seed: number,
): FittedSupply {
  return atOnce(fittingSupply(units, breaks, seed));
}

/** The same, by pieces. */
export function* fittingSupply(
  units: readonly UnitSupply[],
  breaks: ReadonlyMap<string, readonly number[]>,
  seed: number,
): Pieces<FittedSupply> {
  const starts: (readonly number[])[] = [];
  for (const [place, unit] of units.entries()) {
    starts.push(startsOf(unit, breaks.get(unit.unit) ?? []));
    if (place % UNITS_A_PIECE === 0) yield;
  }
  const scale = units.map(scaleOf);
  const rows = units.flatMap(({ days, drop }, unit) =>
    days.flatMap((day, i) => (Number.isFinite(drop[i]) ? [{ unit, day, value: drop[i] / scale[unit] }] : [])),
  );
  const column = (): Int32Array => Int32Array.from(rows, ({ unit }) => unit);
  const none = new Int32Array(rows.length).fill(-1);
  const readings: FleetReadings = {
    rows: rows.length,
    unit: column(),
    lane: column(),
    day: Float64Array.from(rows, ({ day }) => day),
    state: new Uint8Array(rows.length).fill(READING_STATE.found),
    adjusted: new Int8Array(rows.length),
    visit: none,
    analyzer: none,
    first: Float64Array.from(rows, ({ value }) => value),
    second: new Float64Array(rows.length).fill(Number.NaN),
    extra: new Float64Array(rows.length),
    aim: new Float64Array(rows.length).fill(Number.NaN),
    tolerance: new Float64Array(rows.length).fill(Number.NaN),
    zoneMonth: none,
    zoneMonths: 0,
    lanes: {
      count: units.length,
      unit: Int32Array.from(units, (_, unit) => unit),
      classOf: new Int32Array(units.length),
      fuel: new Int32Array(units.length),
      aimInCo2: new Uint8Array(units.length),
    },
    units: units.length,
    analyzers: 0,
    laterAnalyzers: 0,
    classes: 1,
    fuels: 0,
    breaks: starts,
  };
  const free = ['reading', 'wander', 'rate', 'rateWander'] as const;
  const { fit, passes } = yield* fittingModel(readings, { prior: SUPPLY_PRIOR, sample: SAMPLE, seed, free });
  const alone = { ...fit.estimate.spread, rate: ANY_RATE };
  return {
    fit,
    own: yield* fitLanePasses(passes, alone, fit.effects),
    trace: yield* tracePasses(passes, alone, fit.effects),
    scale,
  };
}
