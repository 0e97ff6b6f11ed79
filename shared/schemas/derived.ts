import { date, numeric, type Schema, type SchemaColumn, text } from '../table/schema.ts';

/** A derived number and, beside it, its standard uncertainty. */
const measured = (
  name: string,
  unit: string,
  title: string,
  shownUnit: string,
  digits: number,
  sdUnit = unit,
): SchemaColumn[] => [
  numeric(name, unit, title, shownUnit, digits),
  numeric(`${name}_sd`, sdUnit, `${title}, standard uncertainty`, sdUnit === 'K' ? 'K' : shownUnit, digits + 1),
];

/** One row a reading, in the readings' order. `flags` holds space-separated codes, empty where nothing is to be said. */
export const derivedSchema: Schema = [
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('fuel', 'Fuel'),
  ...measured('o2_pct', '%', 'O2, dry', '%', 1),
  text('o2_from', 'O2 from'),
  ...measured('co2_pct', '%', 'CO2, dry', '%', 1),
  text('co2_from', 'CO2 from'),
  ...measured('excess_air_pct', '%', 'Excess air', '%', 1),
  ...measured('lambda', '1', 'Lambda', '', 3),
  ...measured('co_air_free_ppm', '[ppm]', 'CO, air-free', 'ppm', 0),
  ...measured('co_at_3pct_o2_ppm', '[ppm]', 'CO at 3 % O2', 'ppm', 0),
  ...measured('co_co2_ratio', '1', 'CO/CO2', '', 5),
  ...measured('nox_at_3pct_o2_ppm', '[ppm]', 'NOx at 3 % O2', 'ppm', 0),
  ...measured('stack_loss_pct', '%', 'Stack loss, gross', '%', 1),
  ...measured('efficiency_gross_pct', '%', 'Efficiency, gross', '%', 1),
  ...measured('efficiency_net_pct', '%', 'Efficiency, net', '%', 1),
  ...measured('dew_point_C', 'Cel', 'Dew point of water', '°C', 1, 'K'),
  ...measured('supply_drop_Pa', 'Pa', 'Supply drop', 'Pa', 0),
  ...measured('o2_reference_pct', '%', 'O2 at reference air', '%', 2),
  ...measured('co2_reference_pct', '%', 'CO2 at reference air', '%', 2),
  text('flags', 'Flags'),
];
