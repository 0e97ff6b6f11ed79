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
  /** The day from which it is told to read off: that of a change shown, else of its first reading; empty unless biased. */
  date('off_since', 'Reads off since'),
  /** The day from which it reads otherwise than before, biased or not, and the bias before; the biases above are those since. */
  date('changed_on', 'Reads otherwise since'),
  numeric('o2_bias_before_pct', '%', 'O2 bias before that day', '%', 2),
  numeric('apparent_change_pct', '%', 'O2 seen to change when it follows another', '%', 2),
  numeric('change_by_bias_pct', '%', 'of this by the two biases', '%', 2),
  /** Share of the squares of all changes of O2 seen between visits that goes when its bias is taken out. */
  numeric('drift_share', '1', 'Share of the fleet’s apparent drift', '', 3),
];
