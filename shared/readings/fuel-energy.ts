import { findFuel } from '../fuels/find-fuel.ts';
import { fuelProperties } from '../fuels/fuel-properties.ts';
import { conversion } from '../quantities/convert.ts';
import { findUnit } from '../quantities/find-unit.ts';

const J_PER_KWH = 3.6e6;
/** Amount of an ideal gas in a cubic meter at 15 °C and 101.325 kPa, mol: p / (R T). Source: iso13443. */
const MOL_PER_M3 = 101_325 / (8.314462618 * 288.15);
const M3_PER_GALLON = 0.003785411784;
const BTU_J = 1055.05585262;
/** Gross heat of liquid fuels, MMBtu a US gallon: 40 CFR 98 subpart C, table C-1 (source `cfr98c1`). */
const MMBTU_PER_GALLON: Readonly<Record<string, number>> = {
  no2_oil: 0.138,
  no6_oil: 0.15,
  lpg: 0.092,
  propane: 0.091,
  butane: 0.103,
};

/**
 * Gross energy, kWh, of one unit of a fuel quantity: an energy by conversion, a volume of gas at 15 °C and 101.325 kPa or of liquid
 * fuel (gallons, liters), a mass. NaN where the fuel or the unit does not tell.
 */
export function energyOfOne(unitCode: string, fuel: string): number {
  const unit = findUnit(unitCode);
  if (!unit || unitCode === '') return Number.NaN;
  const kWh = findUnit('kW.h');
  const energy = kWh && conversion(unit, kWh);
  if (energy) return energy.factor;
  const found = findFuel(fuel);
  if (found.status !== 'value') return Number.NaN;
  const { gross } = fuelProperties(found.value);
  const isGas = found.value.composition.kind === 'gas';
  const [length, mass] = unit.dimension;
  if (length === 3 && mass === 0) {
    const liquid = MMBTU_PER_GALLON[found.value.name];
    const sold = ['[gal_us]', 'L'].includes(unit.code);
    if (liquid !== undefined && (sold || !isGas))
      return (unit.factor / M3_PER_GALLON) * ((liquid * 1e6 * BTU_J) / J_PER_KWH);
    return isGas && !sold ? (unit.factor * MOL_PER_M3 * gross) / J_PER_KWH : Number.NaN;
  }
  return mass === 1 && length === 0 && !isGas ? (unit.factor * gross) / J_PER_KWH : Number.NaN;
}
