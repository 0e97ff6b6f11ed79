import { REGULATORY_OXYGEN_PCT } from '../combustion/oxygen-in-air.ts';
import type { Fuel } from './fuel.ts';
import { fuelProperties } from './fuel-properties.ts';

/** Volume of a mole at 68 °F and 29.92 in. Hg, ft3/lbmol. */
const CUBIC_FEET_PER_LBMOL = 385.33;
const MOL_PER_LBMOL = 453.59237;
const MJ_PER_MMBTU = 1055.05585262;

/**
 * F-factors as they follow from a composition, dry scf per million Btu of gross heat, with O2 in air pinned to 20.9 % as
 * in Method 19. They stand beside EPA's tabulated ones, from which they differ by 1 to 4 percent.
 */
export interface CalculatedFactors {
  readonly fd: number;
  readonly fw: number;
  readonly fc: number;
  /** (20.9 - O2) / CO2 without excess air: 20.9 / CO2max. */
  readonly fo: number;
}

export function calculatedFactors(fuel: Pick<Fuel, 'composition'>): CalculatedFactors {
  const { oxygen, carbonDioxide, nitrogen, water } = fuelProperties(fuel);
  const inert = (oxygen * (100 - REGULATORY_OXYGEN_PCT)) / REGULATORY_OXYGEN_PCT;
  const dry = carbonDioxide + nitrogen + inert;
  const toFeet = (CUBIC_FEET_PER_LBMOL / MOL_PER_LBMOL) * MJ_PER_MMBTU;
  return {
    fd: dry * toFeet,
    fw: (dry + water) * toFeet,
    fc: carbonDioxide * toFeet,
    fo: (REGULATORY_OXYGEN_PCT * dry) / (100 * carbonDioxide),
  };
}
