import { type Relation, relation } from './relation.ts';

/**
 * Losses by the indirect method, in percent of gross heat: what leaves with the flue gas above 25 °C, less what the
 * combustion air brought in. Surface losses are not in them.
 */
export const LOSS_RELATIONS: readonly Relation[] = [
  relation(
    'flue_gas_C',
    't,flue',
    'Flue gas temperature, where it can be one',
    'Cel',
    'reading.flue_C >= air_C ? within(reading.flue_C, quantity(-50, "Cel"), quantity(1200, "Cel")) : unknown',
    'stoichiometry',
    'Not colder than the combustion air, and up to 1200 °C.',
  ),
  relation(
    'dry_flue',
    'n,dry',
    'Dry flue gas',
    'mol/MJ',
    'fuel.dry_flue + excess_air * fuel.air',
    'stoichiometry',
    'Complete combustion.',
  ),
  relation(
    'air_humidity',
    'x,air',
    'Water in the combustion air, mole per mole of dry air',
    '1',
    'relative_humidity * saturation_pressure(air_C) / (pressure_Pa - relative_humidity * saturation_pressure(air_C))',
    'if97',
    'Relative humidity at the temperature of the combustion air.',
  ),
  relation(
    'flue_water',
    'n,water',
    'Water in the flue gas, vapor and liquid',
    'mol/MJ',
    'fuel.water + lambda * fuel.air * air_humidity',
    'stoichiometry',
    'Complete combustion.',
  ),
  relation(
    'flue_vapor',
    'n,vapor',
    'Water that leaves as vapor',
    'mol/MJ',
    'flue_gas_C < 85 ? min(flue_water, dry_flue * saturation_pressure(flue_gas_C) / (pressure_Pa - saturation_pressure(flue_gas_C))) : flue_water',
    'if97',
    'In equilibrium with liquid water below the dew point, as in a condensing boiler at its best.',
  ),
  relation(
    'dry_gas_loss_pct',
    'q,dry',
    'Loss with the dry flue gas',
    '%',
    'lambda * fuel.air * (enthalpy_rise("air", flue_gas_C) - enthalpy_rise("air", air_C)) - fuel.oxygen * enthalpy_rise("O2", flue_gas_C) + fuel.carbon_dioxide * enthalpy_rise("CO2", flue_gas_C) + fuel.nitrogen * enthalpy_rise("N2", flue_gas_C)',
    'nasaGlenn',
    'Flue gas -40 to 700 °C; air less the oxygen used, plus the carbon dioxide formed.',
  ),
  relation(
    'water_loss_pct',
    'q,water',
    'Loss with the water',
    '%',
    'flue_vapor * (latent_heat + enthalpy_rise("H2O", flue_gas_C)) + (flue_water - flue_vapor) * liquid_heat_capacity * (flue_gas_C - datum_C) - lambda * fuel.air * air_humidity * (latent_heat + enthalpy_rise("H2O", air_C))',
    'nasaGlenn',
    'Latent heat at 25 °C; what condenses gives it back and leaves as liquid at flue temperature.',
  ),
  relation(
    'co_loss_pct',
    'q,CO',
    'Loss with unburned carbon monoxide',
    '%',
    'otherwise(co_read_ppm * dry_flue, co_air_free_read_ppm * fuel.dry_flue) * co_heat',
    'iso6976',
    'Carbon monoxide in dry flue gas.',
  ),
  relation(
    'stack_loss_pct',
    'q',
    'Stack loss, gross',
    '%',
    'dry_gas_loss_pct + water_loss_pct + otherwise(co_loss_pct, 0)',
    'indirectMethod',
    'Percent of gross heat. Where CO was not read its loss is left out.',
  ),
  relation(
    'efficiency_gross_pct',
    'η,gross',
    'Combustion efficiency, gross',
    '%',
    '100 - stack_loss_pct',
    'indirectMethod',
    'Heat not lost with the flue gas over gross heat; surface and cycling losses are not in it.',
  ),
  relation(
    'efficiency_net_pct',
    'η,net',
    'Combustion efficiency, net',
    '%',
    'efficiency_gross_pct / fuel.net_over_gross',
    'indirectMethod',
    'The same heat over net heat; above 100 % where enough water condenses.',
  ),
  relation(
    'dew_point_C',
    't,dew',
    'Dew point of water in the flue gas',
    'Cel',
    'saturation_temperature(pressure_Pa * flue_water / (dry_flue + flue_water))',
    'if97',
    'Of water; the dew point of acid lies higher, for oil far higher.',
  ),
];

/** Dry combustion air is the usual case; then its water is left out rather than multiplied by zero. */
export const DRY_AIR_FORMULAS: ReadonlyMap<string, string> = new Map([
  ['air_humidity', '0'],
  ['flue_water', 'fuel.water'],
  [
    'water_loss_pct',
    'flue_vapor * (latent_heat + enthalpy_rise("H2O", flue_gas_C)) + (flue_water - flue_vapor) * liquid_heat_capacity * (flue_gas_C - datum_C)',
  ],
]);
