import { conditionsOf } from './conditions.ts';
import { fuelPhysics } from './fuel-physics.ts';
import { type Moment, measure } from './measure.ts';
import { PLANTS } from './plants.ts';
import { type Chance, chanceFrom } from './random.ts';
import type { Reading } from './reading.ts';
import type { FireName, FirePlan, FuelName, FuelPlan, UnitPlan } from './unit-plan.ts';
import { type Visit, visitsOf } from './visit.ts';

/** Drift of O2 at reference air in a class: mean and spread a year, wander in the root of a year. Small, so that only what was planted leaves. */
const CLASS_DRIFT = {
  linkage: { mean: 0.1, spread: 0.12, wander: 0.06 },
  parallel: { mean: 0, spread: 0.12, wander: 0.05 },
  pneumatic: { mean: 0.05, spread: 0.1, wander: 0.04 },
  fixed: { mean: 0.02, spread: 0.03, wander: 0.05 },
} as const;

interface Lane {
  readonly fuel: FuelName;
  readonly fire: FireName;
  readonly plan: FirePlan;
  readonly ownDrift: number;
  o2: number;
  since: number;
}

/** O2 at reference air that a target stands for. HUT-2 had richer targets before it was replaced. */
function targetO2(lane: Pick<Lane, 'fuel' | 'plan'>, unit: UnitPlan, day: number): number {
  const older = unit.unit === PLANTS.replaced.unit && day < PLANTS.replaced.on ? 0.4 : 0;
  return lane.plan.quantity === 'o2' ? lane.plan.target : fuelPhysics(lane.fuel).o2FromCo2(lane.plan.target + older);
}

/** The setting tolerance as O2. */
const toleranceO2 = ({ fuel, plan }: Pick<Lane, 'fuel' | 'plan'>): number =>
  plan.quantity === 'o2' ? plan.tolerance : (20.95 * plan.tolerance) / fuelPhysics(fuel).co2Max;

function lanesOf(unit: UnitPlan, start: number, chance: Chance): Lane[] {
  const drift = CLASS_DRIFT[unit.trim ? 'parallel' : unit.control];
  return unit.fuels.flatMap(({ fuel, fires }: FuelPlan) =>
    (Object.entries(fires) as [FireName, FirePlan][]).map(([fire, plan]) => ({
      fuel,
      fire,
      plan,
      ownDrift: chance.normal(drift.mean, drift.spread),
      o2: targetO2({ fuel, plan }, unit, start) + chance.normal(0, 0.15),
      since: start,
    })),
  );
}

/** Moves a lane on to a day: its own small drift and wander, or the planted drift. */
function age(lane: Lane, unit: UnitPlan, day: number, chance: Chance): void {
  const plant = PLANTS.drifts.find(
    (each) => each.unit === unit.unit && each.fire === lane.fire && each.from <= lane.since,
  );
  const years = (day - lane.since) / 365.2425;
  const { wander } = CLASS_DRIFT[unit.trim ? 'parallel' : unit.control];
  // A planted drift wanders little, so that where it stands at the end does not hang on luck.
  const spread = (plant ? 0.03 : wander) * Math.sqrt(years);
  lane.o2 += (plant?.o2PerYear ?? lane.ownDrift) * years + chance.normal(0, spread);
  lane.since = day;
}

/** Whether the crew turns the screw: the house crew never, the others where the setting has moved by more than about half its tolerance. */
function isAdjusted(lane: Lane, unit: UnitPlan, { crew, day }: Visit): boolean {
  if (crew === 'house' || unit.burner === 'atmospheric') return false;
  const plant = PLANTS.drifts.find((each) => each.unit === unit.unit && each.fire === lane.fire);
  if (plant && day >= plant.leftAloneFrom) return false;
  return Math.abs(lane.o2 - targetO2(lane, unit, day)) > (plant ? 0.1 : 0.45) * toleranceO2(lane);
}

function dropOf(unit: UnitPlan, day: number): number {
  const plant = PLANTS.drops.find((each) => each.unit === unit.unit);
  return unit.supply.dropInwc + (plant ? (Math.max(0, day - plant.from) / 365.2425) * plant.inwcPerYear : 0);
}

/** The readings of one lane at one visit: as found, now and then a trial, as left. The crew sets by a season card, so the setting is meant at reference air. */
function readLane(lane: Lane, moment: Moment, chance: Chance): Reading[] {
  const { unit, visit } = moment;
  const found = { ...measure(moment, chance), state: 'as_found' as const };
  if (visit.crew === 'house') return [{ ...found, adjusted: 'no' as const }];
  const adjusted = isAdjusted(lane, unit, visit);
  const trials: Reading[] = [];
  if (adjusted) {
    const target = targetO2(lane, unit, visit.day);
    if (chance.chance(0.15)) {
      const between = { ...moment, minute: moment.minute + 9, referenceO2: (lane.o2 + target) / 2 };
      trials.push({ ...measure(between, chance), state: 'trial' });
    }
    lane.o2 = target + chance.normal(0, 0.15 * toleranceO2(lane));
  }
  const left = measure({ ...moment, minute: moment.minute + 22, referenceO2: lane.o2 }, chance);
  const word = adjusted ? ('yes' as const) : ('no' as const);
  return [
    { ...found, adjusted: word },
    ...trials,
    { ...left, state: 'as_left' as const, adjusted: word, returned: 'yes' as const },
  ];
}

/** How a lane truly stands at the last visit, and how it goes on from there. */
export interface TrueLane extends Readonly<Omit<Lane, 'ownDrift'>> {
  readonly o2PerYear: number;
  readonly wander: number;
}

function trueLane(lane: Lane, unit: UnitPlan): TrueLane {
  const plant = PLANTS.drifts.find((each) => each.unit === unit.unit && each.fire === lane.fire);
  const wander = plant ? 0.03 : CLASS_DRIFT[unit.trim ? 'parallel' : unit.control].wander;
  return { ...lane, o2PerYear: plant?.o2PerYear ?? lane.ownDrift, wander };
}

/** A new boiler under the old id starts at its own targets. */
function replace(lanes: readonly Lane[], unit: UnitPlan, chance: Chance): void {
  for (const lane of lanes) {
    lane.since = PLANTS.replaced.on;
    lane.o2 = targetO2(lane, unit, lane.since) + chance.normal(0, 0.05);
  }
}

/** Ten years of one unit: every reading that was taken, complete and faultless, and the truth at the end. */
export function lifeOf(unit: UnitPlan): { readonly readings: readonly Reading[]; readonly truth: readonly TrueLane[] } {
  const visits = visitsOf(unit);
  const chance = chanceFrom(`life ${unit.unit}`);
  const lanes = lanesOf(unit, (visits[0]?.day ?? 0) - 200, chance);
  const { on } = PLANTS.replaced;
  const readings = visits.flatMap((visit) => {
    const conditions = conditionsOf(unit, visit.day);
    const visitShift = chance.normal(0, 0.05);
    if (unit.unit === PLANTS.replaced.unit && visit.day >= on && lanes.every(({ since }) => since < on))
      replace(lanes, unit, chance);
    return lanes.flatMap((lane, index) => {
      age(lane, unit, visit.day, chance);
      // Oil is burnt in autumn tests only.
      if (lane.fuel === 'no2_oil' && visit.reason !== 'scheduled') return [];
      const dropInwc = lane.fuel === 'natural_gas' ? dropOf(unit, visit.day) : Number.NaN;
      const moment: Moment = {
        unit,
        visit,
        minute: visit.minute + 10 * index,
        fire: lane.fire,
        fuel: lane.fuel,
        plan: lane.plan,
        referenceO2: lane.o2,
        dropInwc,
        conditions,
        visitShift,
      };
      return readLane(lane, moment, chance);
    });
  });
  return { readings, truth: lanes.map((lane) => trueLane(lane, unit)) };
}
