import { chanceFrom } from './random.ts';
import type { UnitPlan } from './unit-plan.ts';
import { weatherOn } from './weather.ts';

/** What surrounds a unit on the day of a visit. */
export interface Conditions {
  /** Combustion air at the burner, °C. A boiler room is warm and sees about a quarter of the weather. */
  readonly airC: number;
  readonly barometerKPa: number;
  /** Water coming back to the boiler, °C: colder weather, warmer water. */
  readonly returnC: number;
  /** Supply pressure with no flow, inches of water column. */
  readonly staticInwc: number;
  /** lambda here divided by lambda in air of 20 °C and 101.325 kPa. */
  readonly lambdaFactor: number;
}

/** Power of the air's density in lambda: fans move volume, ratio valves follow half of it, trim holds, draft hardly answers. */
function densityExponent(unit: UnitPlan): number {
  if (unit.trim) return 0;
  return { power: 1, premix: 0.5, atmospheric: 0.2 }[unit.burner];
}

export function conditionsOf(unit: UnitPlan, day: number): Conditions {
  const weather = weatherOn(day);
  const chance = chanceFrom(`conditions ${unit.unit} ${day}`);
  const building = chanceFrom(`supply ${unit.building} ${day}`);
  const airC =
    unit.air === 'outside'
      ? weather.outsideC + chance.normal(0.5, 1)
      : 24 + 0.25 * (weather.outsideC - 11) + chance.normal(0, 1.5);
  const exponent = densityExponent(unit);
  // The barometer cancels in a ratio valve: gas and air share the pressure of the room.
  const pressure = unit.burner === 'premix' ? 1 : (weather.barometerKPa / 101.325) ** exponent;
  const heating = Math.min(58, Math.max(34, 52 - 0.9 * (weather.outsideC - 5)));
  return {
    airC,
    barometerKPa: weather.barometerKPa,
    returnC: (unit.condensing ? heating : 68) + chance.normal(0, 1.5),
    staticInwc: unit.supply.staticInwc + building.normal(0, 0.08),
    lambdaFactor: (293.15 / (airC + 273.15)) ** exponent * pressure,
  };
}
