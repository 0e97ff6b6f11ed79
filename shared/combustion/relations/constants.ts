import type { NamedConstant } from '../../formula/definition.ts';
import { AIR_OXYGEN_PCT, REGULATORY_OXYGEN_PCT } from '../oxygen-in-air.ts';

const constant = (value: number, unit: string, symbol: string, title: string): NamedConstant => ({
  value,
  unit,
  symbol,
  title,
});

/** Numbers that relations name. `relative_humidity` and `reference_air` are those that a notebook may set. */
export const CONSTANTS: ReadonlyMap<string, NamedConstant> = new Map([
  ['air_oxygen', constant(AIR_OXYGEN_PCT, '%', 'O2,air', 'Oxygen in dry air, for thermochemistry')],
  [
    'regulatory_oxygen',
    constant(REGULATORY_OXYGEN_PCT, '%', 'O2,20.9', 'Oxygen in dry air as air-free CO and regulations take it'),
  ],
  ['latent_heat', constant(44.013, 'kJ/mol', 'L', 'Latent heat of water at 25 °C (ISO 6976:2016)')],
  ['liquid_heat_capacity', constant(75.33, 'J/(mol.K)', 'c,liquid', 'Heat capacity of liquid water')],
  ['co_heat', constant(282.98, 'kJ/mol', 'H,CO', 'Heating value of carbon monoxide at 25 °C (ISO 6976:2016)')],
  ['no2_mass', constant(46.0055, 'g/mol', 'M,NO2', 'Molar mass of nitrogen dioxide')],
  ['co_mass', constant(28.0101, 'g/mol', 'M,CO', 'Molar mass of carbon monoxide')],
  ['molar_volume', constant(0.022413969, 'm3/mol', 'V,0', 'Volume of a mole of ideal gas at 0 °C and 101.325 kPa')],
  [
    'nox_density',
    constant(0.1194, 'lb/ft3', 'K,NO2', 'NO2 at 68 °F: 1 ppm is 1.194e-7 lb/scf (EPA Method 19, table 19-1)'),
  ],
  ['co_density', constant(0.07269, 'lb/ft3', 'K,CO', 'CO at 68 °F: 1 ppm is 7.269e-8 lb/scf')],
  ['reference_air', constant(293.15, 'K', 'T,ref', 'Reference air, 20 °C unless the notebook says otherwise')],
  ['datum_C', constant(25, 'Cel', 't,0', 'Datum of enthalpies and heating values')],
]);
