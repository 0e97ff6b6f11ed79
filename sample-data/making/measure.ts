import type { Conditions } from './conditions.ts';
import { fuelPhysics } from './fuel-physics.ts';
import { PLANTS } from './plants.ts';
import type { Chance } from './random.ts';
import type { Reading } from './reading.ts';
import type { FireName, FirePlan, FuelName, UnitPlan } from './unit-plan.ts';
import type { Visit } from './visit.ts';

/** One moment at one fire: what is true there, and who looks at it. */
export interface Moment {
  readonly unit: UnitPlan;
  readonly visit: Visit;
  readonly minute: number;
  readonly fire: FireName;
  readonly fuel: FuelName;
  readonly plan: FirePlan;
  /** True O2 in air of 20 °C and 101.325 kPa, % dry. */
  readonly referenceO2: number;
  readonly dropInwc: number;
  readonly conditions: Conditions;
  /** What all readings of this visit share beside the analyzer, % O2. */
  readonly visitShift: number;
}

/** True O2 in the flue at the conditions of the day. */
export function trueO2({ fuel, referenceO2, conditions }: Pick<Moment, 'fuel' | 'referenceO2' | 'conditions'>): number {
  const physics = fuelPhysics(fuel);
  return physics.o2FromLambda(physics.lambdaFromO2(referenceO2) * conditions.lambdaFactor);
}

/** CO, ppm dry: low where there is air, rising where there is little. */
function coOf(unit: UnitPlan, o2: number, chance: Chance): number {
  const base = { premix: 34, power: 16, atmospheric: 9 }[unit.burner];
  return Math.round(base * Math.exp(chance.normal(0, 0.3)) * (1 + Math.exp(2.5 * (1.6 - o2))));
}

/** Flue temperature, °C: the plan's at target, a little more with more air, following the returning water where it condenses. */
function flueOf({ unit, plan, conditions }: Moment, o2: number, chance: Chance): number {
  const atTarget = plan.quantity === 'co2' ? 5.4 : plan.target;
  const base = unit.condensing ? conditions.returnC + (plan.flueC - 45) : plan.flueC + 0.4 * (conditions.airC - 24);
  return base + (unit.condensing ? 0.5 : 2.5) * (o2 - atTarget) + chance.normal(0, unit.condensing ? 1 : 2);
}

/** Which analyzers have a CO2 cell of their own; the others calculate CO2 from O2. */
const MEASURES_CO2 = ['An-203', 'An-305'];

/** A reading of the moment, with the analyzer's own error, complete: gaps come later. */
export function measure(moment: Moment, chance: Chance): Reading {
  const { unit, visit, fire, fuel, conditions } = moment;
  const physics = fuelPhysics(fuel);
  const truth = trueO2(moment);
  const bias = PLANTS.analyzers[visit.analyzer] ?? 0;
  const o2 = truth + bias + moment.visitShift + chance.normal(0, 0.08);
  const measured = MEASURES_CO2.includes(visit.analyzer);
  const co2 = measured
    ? physics.co2FromO2(truth + moment.visitShift) + chance.normal(0, 0.06)
    : (physics.co2Max + 0.05) * (1 - Number(o2.toFixed(1)) / 20.95);
  const rate = fire === 'low' ? 100 * (unit.inputLow / unit.inputHigh) : 100 - Math.abs(chance.normal(0, 1.2));
  const flueC = flueOf(moment, truth, chance);
  return {
    unit: unit.unit,
    visit,
    minute: moment.minute,
    fire,
    state: '',
    adjusted: '',
    fuel,
    ratePct: Math.round(rate),
    o2,
    co2,
    co2From: measured ? 'measured' : 'calculated',
    co: String(coOf(unit, truth, chance)),
    flueC,
    airC: conditions.airC + chance.normal(0, 0.5),
    returnC: conditions.returnC,
    staticInwc: conditions.staticInwc + chance.normal(0, 0.012),
    runningInwc: conditions.staticInwc - moment.dropInwc * (rate / 100) ** 1.85 + chance.normal(0, 0.012),
    efficiencyGross: physics.efficiencyGross(o2, flueC, conditions.airC),
    efficiencyNet: physics.efficiencyNet(o2, flueC, conditions.airC),
    barometerKPa: conditions.barometerKPa,
    returned: '',
    note: '',
  };
}
