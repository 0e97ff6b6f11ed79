import type { NamedConstant } from '../../formula/definition.ts';
import { AIR_OXYGEN_PCT, REGULATORY_OXYGEN_PCT } from '../oxygen-in-air.ts';

const constant = (value: number, unit: string, symbol: string, title: string): NamedConstant => ({
  value,
  unit,
  symbol,
  title,
});

/** Numbers that relations name. `relative_humidity` is the one a notebook may set. */
export const CONSTANTS: ReadonlyMap<string, NamedConstant> = new Map([
  ['air_oxygen', constant(AIR_OXYGEN_PCT, '%', 'O2,air', 'Oxygen in dry air, for thermochemistry')],
  [
    'regulatory_oxygen',
    constant(REGULATORY_OXYGEN_PCT, '%', 'O2,20.9', 'Oxygen in dry air as air-free CO and regulations take it'),
  ],
  ['latent_heat', constant(44.013, 'kJ/mol', 'L', 'Latent heat of water at 25 °C (ISO 6976:2016)')],
  ['liquid_heat_capacity', constant(75.33, 'J/(mol.K)', 'c,liquid', 'Heat capacity of liquid water')],
  ['co_heat', constant(282.98, 'kJ/mol', 'H,CO', 'Heating value of carbon monoxide at 25 °C (ISO 6976:2016)')],
  ['datum_C', constant(25, 'Cel', 't,0', 'Datum of enthalpies and heating values')],
]);
