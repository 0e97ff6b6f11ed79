import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row an analyzer: its bias against the fleet's mean analyzer, in points of dry O2 and CO2. */
export const instrumentsSchema: Schema = [
  text('analyzer', 'Analyzer'),
  numeric('readings', '1', 'Readings', '', 0),
  numeric('o2_bias_pct', '%', 'O2 bias', '%', 2),
  numeric('o2_bias_pct_sd', '%', 'O2 bias, standard deviation', '%', 2),
  numeric('co2_bias_pct', '%', 'CO2 bias', '%', 2),
  numeric('co2_bias_pct_sd', '%', 'CO2 bias, standard deviation', '%', 2),
  /** within, biased, confounded or unknown. */
  text('verdict', 'Verdict'),
  numeric('units', '1', 'Units read', '', 0),
  date('read_from', 'First reading'),
  text('reason', 'Why'),
];
