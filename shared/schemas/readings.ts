import { date, numeric, type Schema, text } from '../table/schema.ts';

/**
 * One row = one reading: a unit, a visit, a fire point, a state. Canonical: °C, Pa, kPa (barometer), kW.
 * fire is high | low | mid | single | unnamed and state as_found | as_left | trial | unknown, neither ever empty;
 * adjusted and returned_to_service are yes | no | unknown; co2_from is measured | calculated | unknown.
 * The columns of carbon monoxide keep bounds. source_line is the physical line of the file, its first line being 1.
 */
export const readingsSchema: Schema = [
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('adjusted', 'Adjusted'),
  text('visit', 'Visit'),
  text('visit_reason', 'Reason for the visit'),
  text('technician', 'Technician'),
  text('fuel', 'Fuel'),
  numeric('firing_rate_pct', '%', 'Firing rate', '%', 0),
  numeric('o2_pct', '%', 'O2', '%', 1),
  numeric('co2_pct', '%', 'CO2', '%', 1),
  text('co2_from', 'CO2 is'),
  numeric('o2_wet_pct', '%', 'O2 wet', '%', 1),
  numeric('co_ppm', '[ppm]', 'CO', 'ppm', 0),
  numeric('co_air_free_ppm', '[ppm]', 'CO air-free', 'ppm', 0),
  numeric('nox_ppm', '[ppm]', 'NOx', 'ppm', 0),
  numeric('flue_C', 'Cel', 'Flue', '°C', 1),
  numeric('air_C', 'Cel', 'Air', '°C', 1),
  numeric('water_return_C', 'Cel', 'Return', '°C', 1),
  numeric('water_supply_C', 'Cel', 'Supply water', '°C', 1),
  numeric('supply_static_Pa', 'Pa', 'Gas static', 'Pa', 0),
  numeric('supply_running_Pa', 'Pa', 'Gas running', 'Pa', 0),
  numeric('manifold_Pa', 'Pa', 'Manifold', 'Pa', 0),
  numeric('draft_Pa', 'Pa', 'Draft', 'Pa', 1),
  numeric('efficiency_printed_pct', '%', 'Efficiency printed', '%', 1),
  numeric('excess_air_printed_pct', '%', 'Excess air printed', '%', 1),
  numeric('flame_signal_uA', 'uA', 'Flame signal', 'µA', 1),
  numeric('heat_input_clocked_kW', 'kW', 'Heat input clocked', 'kW', 1),
  text('analyzer', 'Analyzer'),
  date('calibrated_on', 'Calibrated'),
  text('returned_to_service', 'Returned to service'),
  numeric('barometer_kPa', 'kPa', 'Barometer', 'kPa', 1),
  numeric('co_ambient_ppm', '[ppm]', 'CO ambient', 'ppm', 0),
  text('note', 'Note'),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];

/** A row that was not accepted: where it stood, why, and its text as the file holds it. */
export const setAsideSchema: Schema = [
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
  text('reason', 'Why it was set aside'),
  text('original', 'As it stands in the file'),
];

/** A cell or row of a register, an events or a fuel-use table that could not be used. */
export const faultsSchema: Schema = [
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
  text('reason', 'What could not be used'),
];

/** A row whose every value equals that of an accepted one, which it names. */
export const duplicatesSchema: Schema = [
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
  text('of_file', 'Same as in file'),
  numeric('of_line', '1', 'line', '', 0),
];

/** What a column of a file was taken for, in which unit, how sure that is and why; taken_for is empty where it is not used. */
export const columnsSchema: Schema = [
  text('source_file', 'File'),
  numeric('source_line', '1', 'Head on line', '', 0),
  numeric('place', '1', 'Column', '', 0),
  text('head', 'Head'),
  text('first_value', 'First value'),
  text('taken_for', 'Taken for'),
  text('unit_code', 'Code of the unit'),
  text('unit_shown', 'In'),
  text('fire', 'Fire'),
  text('state', 'State'),
  numeric('sure_pct', '%', 'Sure', '%', 0),
  text('reason', 'Why'),
  text('unknown_words', 'Words not known'),
  text('profile', 'By profile'),
];

/** One row a file; rows_read = accepted + set_aside + duplicates. */
export const accountSchema: Schema = [
  text('file', 'File'),
  numeric('rows_read', '1', 'Readings', '', 0),
  numeric('accepted', '1', 'Accepted', '', 0),
  numeric('set_aside', '1', 'Set aside', '', 0),
  numeric('duplicates', '1', 'Duplicates', '', 0),
];

/**
 * What evidence says where the files do not: one row a unit and kind (fires, states, fuels), with what its readings would
 * be named. Nothing of it counts until it is accepted.
 */
export const proposalsSchema: Schema = [
  text('kind', 'Proposed'),
  text('unit', 'Unit'),
  numeric('readings', '1', 'Readings', '', 0),
  text('would_be', 'Would be'),
  text('evidence', 'Evidence'),
  text('accepted', 'Accepted'),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];

/** An event that the note of a reading tells of: a proposal for the events. */
export const toldEventsSchema: Schema = [
  text('unit', 'Unit'),
  date('on', 'On'),
  text('event', 'Event'),
  text('note', 'Note'),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];
