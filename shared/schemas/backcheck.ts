import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a forecast: what was said on a past day of a lane, and what its next visit found, in the lane's quantity. */
export const forecastsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  date('said_on', 'Said on'),
  date('found_on', 'Next visit'),
  numeric('found', '%', 'Found', '%', 2),
  text('found_outside', 'Found outside'),
  numeric('expected', '%', 'Expected', '%', 2),
  numeric('expected_sd', '%', 'Expected, standard deviation', '%', 2),
  numeric('chance', '1', 'Chance of being found outside', '', 2),
  numeric('chance_by_last', '1', 'By the last reading only', '', 2),
  numeric('chance_by_line', '1', 'By a line per unit', '', 2),
  numeric('probability_out_by_horizon', '1', 'Chance of leaving by the horizon', '', 2),
];

/** Of the forecasts with a chance between `from` and `to`: how many were found outside. */
export const calibrationSchema: Schema = [
  numeric('from', '1', 'Chance from', '', 2),
  numeric('to', '1', 'to', '', 2),
  numeric('forecasts', '1', 'Forecasts', '', 0),
  numeric('mean_chance', '1', 'Mean chance', '', 2),
  numeric('found_outside', '1', 'Found outside', '', 2),
];

export const coverageSchema: Schema = [
  numeric('level', '1', 'Interval', '', 2),
  numeric('share', '1', 'Next readings inside', '', 2),
];

/** Brier score of the chance of being found outside, and its skill against the overall share. */
export const methodsSchema: Schema = [
  text('method', 'Method'),
  numeric('brier', '1', 'Brier score', '', 4),
  numeric('skill', '1', 'Skill', '', 2),
];
