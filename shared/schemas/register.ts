import { date, numeric, type Schema, text } from '../table/schema.ts';

/**
 * One row = one unit and fuel, from a day on where targets changed (valid_from, else unknown). Heat inputs in kW.
 * `unit` is never unknown; everything else may be. trim, condensing and standby are yes | no | unknown.
 */
export const unitsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  date('valid_from', 'Valid from'),
  text('site', 'Site'),
  text('building', 'Building'),
  text('gas_zone', 'Gas zone'),
  text('service', 'Service'),
  text('burner', 'Burner'),
  text('firing', 'Firing'),
  text('fuel_air_control', 'Fuel-air control'),
  text('air_source', 'Air from'),
  text('trim', 'O2 trim'),
  text('condensing', 'Condensing'),
  numeric('heat_input_high_kW', 'kW', 'Input at high fire', 'kW', 0),
  numeric('heat_input_low_kW', 'kW', 'Input at low fire', 'kW', 0),
  date('installed_on', 'Installed'),
  date('retired_on', 'Retired'),
  numeric('altitude_m', 'm', 'Altitude', 'm', 0),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];

/**
 * Long form: one row a unit, fuel, fire and quantity ('o2_pct' or 'co2_pct') with at least one number known.
 * setting_*: what a technician sets to; service_*: what it must hold between visits.
 */
export const limitsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  date('valid_from', 'Valid from'),
  text('fire', 'Fire'),
  text('quantity', 'Quantity'),
  numeric('target_pct', '%', 'Target', '%', 2),
  numeric('setting_lower_pct', '%', 'Set from', '%', 2),
  numeric('setting_upper_pct', '%', 'Set to', '%', 2),
  numeric('service_lower_pct', '%', 'Hold from', '%', 2),
  numeric('service_upper_pct', '%', 'Hold to', '%', 2),
];

/** The rows of the limits that have a target, without what must hold between visits. */
export const targetsSchema: Schema = limitsSchema.filter(({ name }) => !name.startsWith('service_'));

/** One row a unit with at least one limit of its gas supply known. */
export const supplyLimitsSchema: Schema = [
  text('unit', 'Unit'),
  numeric('supply_min_Pa', 'Pa', 'Supply at least', 'Pa', 0),
  numeric('supply_max_Pa', 'Pa', 'Supply at most', 'Pa', 0),
  numeric('drop_limit_Pa', 'Pa', 'Drop at most', 'Pa', 0),
];

/** One row a unit and fuel with something known. Energy is gross; annual_fuel_unit is the unit the register used. */
export const economicsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  numeric('annual_fuel_kWh', 'kW.h', 'Fuel a year', 'kWh', 0),
  text('annual_fuel_unit', 'Registered in'),
  numeric('fuel_price_per_kWh', '/kW.h', 'Price', 'per kWh', 4),
  numeric('low_fire_share', '1', 'Burnt at low fire', '', 2),
];

/** One row a unit with something known: what the plan and the visit sheet need. */
export const planningSchema: Schema = [
  text('unit', 'Unit'),
  numeric('max_interval_months', 'mo', 'Visit at least every', 'months', 0),
  date('next_visit_on', 'Next visit'),
  text('standby', 'Standby'),
  text('access_note', 'Access'),
  text('tap_note', 'Pressure tap'),
  text('adjust_high_note', 'Adjusting high fire'),
  text('adjust_low_note', 'Adjusting low fire'),
];

/** One row a unit and field that the register leaves empty, with what stands in its place. */
export const gapsSchema: Schema = [
  text('unit', 'Unit'),
  text('missing', 'Not known'),
  text('instead', 'Stands in its place'),
  text('field', 'Field'),
];
