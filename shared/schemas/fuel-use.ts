import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row = the fuel one unit used in a period: from the first day to the last, both inside; energy gross. */
export const fuelUseSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  date('from', 'From'),
  date('to', 'To'),
  numeric('energy_kWh', 'kW.h', 'Energy', 'kWh', 0),
  numeric('cost', '1', 'Cost', '', 2),
];
