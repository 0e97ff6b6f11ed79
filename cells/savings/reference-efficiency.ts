import { enthalpyRise } from '../../shared/combustion/enthalpy.ts';
import { excessAirFromO2 } from '../../shared/combustion/flue-gas.ts';
import { saturationPressurePa } from '../../shared/combustion/saturation.ts';
import type { FuelProperties } from '../../shared/fuels/fuel-properties.ts';

/** One reading as far as its efficiency goes. Percent of dry flue gas, °C. */
export interface HeatReading {
  readonly efficiencyPct: number;
  readonly o2Pct: number;
  readonly flueC: number;
  /** NaN where it was not read; the derivation then took 20 °C too. */
  readonly airC: number;
  readonly dewPointC: number;
}

/** Taken by the derivation where no air temperature was read. */
export const MISSING_AIR_C = 20;
const KELVIN = 273.15;
const PRESSURE_PA = 101_325;
/** Latent heat of water at 25 °C, J/mol (ISO 6976:2016). */
const LATENT = 44_013;

const airAt = (celsius: number): number => enthalpyRise('air', celsius + KELVIN);

/**
 * The gross efficiency that the reading would have shown with another O2 and another air temperature, at the same flue
 * temperature. Air beyond what the fuel needs passes through unchanged, so that the loss moves by
 *
 *   n (l' h(flue) - l h(flue) - l' h(air') + l h(air)),
 *
 * n moles of stoichiometric air per MJ of gross heat, l the air ratio, h the molar enthalpy of air; where water condenses
 * the vapor that the additional dry gas carries off is added. Exact for the relations of the derivation.
 */
export function efficiencyAt(reading: HeatReading, o2Pct: number, airC: number, fuel: FuelProperties): number {
  const { efficiencyPct, flueC } = reading;
  const from = Number.isFinite(reading.airC) ? reading.airC : MISSING_AIR_C;
  const [was, is] = [reading.o2Pct, o2Pct].map((o2) => 1 + excessAirFromO2(o2, fuel));
  const flue = airAt(flueC);
  const sensible = fuel.air * ((is - was) * flue - is * airAt(airC) + was * airAt(from));
  const latent = fuel.air * (is - was) * LATENT * vaporRatio(reading, 0);
  return efficiencyPct - (100 * (sensible + latent)) / 1e6;
}

/** Moles of vapor that a mole of dry flue gas carries off, so many kelvin off the reading; 0 where nothing condenses. */
function vaporRatio({ flueC, dewPointC }: HeatReading, kelvin: number): number {
  if (!(flueC < dewPointC)) return 0;
  const vapor = saturationPressurePa(flueC + kelvin + KELVIN);
  return vapor / (PRESSURE_PA - vapor);
}

/** Points of efficiency for one point of O2, and for one kelvin of flue temperature, at the reading; both positive. */
export function efficiencySlopes(reading: HeatReading, fuel: FuelProperties): { perO2: number; perKelvin: number } {
  const air = Number.isFinite(reading.airC) ? reading.airC : MISSING_AIR_C;
  const step = 0.1;
  const perO2 =
    (efficiencyAt(reading, reading.o2Pct - step, air, fuel) - efficiencyAt(reading, reading.o2Pct + step, air, fuel)) /
    (2 * step);
  const lambda = 1 + excessAirFromO2(reading.o2Pct, fuel);
  const heat = (flueHeat(reading.flueC + 1, lambda, fuel) - flueHeat(reading.flueC - 1, lambda, fuel)) / 2;
  // Below the dew point each kelvin also keeps vapor in the flue that would have condensed: ten times the sensible part.
  const dry = fuel.dryFlue + excessAirFromO2(reading.o2Pct, fuel) * fuel.air;
  const latent = LATENT * dry * (vaporRatio(reading, 0.5) - vaporRatio(reading, -0.5));
  return { perO2, perKelvin: (100 * (heat + latent)) / 1e6 };
}

/** Sensible heat of the flue gas above 25 °C, J for a MJ of gross heat: air less the oxygen used, and what was formed. */
function flueHeat(flueC: number, lambda: number, fuel: FuelProperties): number {
  const of = (gas: 'air' | 'O2' | 'CO2' | 'N2' | 'H2O'): number => enthalpyRise(gas, flueC + KELVIN);
  const dry =
    lambda * fuel.air * of('air') - fuel.oxygen * of('O2') + fuel.carbonDioxide * of('CO2') + fuel.nitrogen * of('N2');
  return dry + fuel.water * of('H2O');
}
