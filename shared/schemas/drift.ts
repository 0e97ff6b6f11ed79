import { date, numeric, type Schema, text } from '../table/schema.ts';

/**
 * One row a unit, fuel and fire, in the quantity that its target is written in, at reference air.
 * `probability_out_by_horizon` is the chance of having been outside at least once between the last visit and the
 * horizon, already outside when left included; `leaves_on_*` are the days on which that chance reaches 10, 50, 90 %. Chances
 * below 1e-9, to which they are calculated, are told as 0. Intervals are empirical-Bayes: 95 % of a fleet's lanes, on average.
 */
export const driftSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  text('quantity', 'Quantity'),
  numeric('readings_used', '1', 'Readings used', '', 0),
  numeric('visits_used', '1', 'Visits used', '', 0),
  numeric('level_now', '%', 'Level now', '%', 2),
  numeric('level_now_sd', '%', 'Level now, standard deviation', '%', 2),
  numeric('slope_per_year', '%/a', 'Drift', '%/year', 2),
  numeric('slope_lower', '%/a', 'Drift, lower 95 %', '%/year', 2),
  numeric('slope_upper', '%/a', 'Drift, upper 95 %', '%/year', 2),
  text('slope_source', 'Drift known from'),
  numeric('lower_limit', '%', 'Lower limit', '%', 2),
  numeric('upper_limit', '%', 'Upper limit', '%', 2),
  numeric('margin_now', '%', 'Margin now', '%', 2),
  date('horizon_on', 'Horizon'),
  numeric('probability_out_by_horizon', '1', 'Chance of leaving by the horizon', '', 2),
  numeric('probability_outside_at_horizon', '1', 'Chance of being outside on the horizon', '', 2),
  date('leaves_on_10', '10 % chance of having left on'),
  date('leaves_on_50', '50 % chance of having left on'),
  date('leaves_on_90', '90 % chance of having left on'),
  numeric('target_pct', '%', 'Target', '%', 2),
  numeric('setting_lower_pct', '%', 'Setting tolerance, lower', '%', 2),
  numeric('setting_upper_pct', '%', 'Setting tolerance, upper', '%', 2),
  /** service, setting, target, as_left, class_band, or none. */
  text('band_source', 'Band from'),
  date('last_visit_on', 'Last visit'),
  numeric('level_left', '%', 'Level left at the last visit', '%', 2),
  numeric('margin_left', '%', 'Margin left at the last visit', '%', 2),
  numeric('last_as_measured', '%', 'Last reading as measured', '%', 2),
  numeric('own_weight', '1', 'Weight of own data', '', 2),
  date('series_from', 'Series since'),
  /** The visit since which the unit drifts as it does now; empty where it always did. */
  date('drift_began_on', 'Drifts so since'),
  text('reason', 'Why unknown'),
];

/** Readings of the lanes, as judged and as measured, and the fitted level of that day before any adjustment; `used` is yes or no. */
export const driftPointsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  date('day', 'Day'),
  text('quantity', 'Quantity'),
  numeric('value', '%', 'At reference air', '%', 2),
  numeric('as_measured', '%', 'As measured', '%', 2),
  numeric('level', '%', 'Level', '%', 2),
  text('state', 'State'),
  text('used', 'Used'),
];

/** The fitted level with its 95 % interval at each visit, and monthly from the last visit on to the horizon. */
export const driftPathSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  date('day', 'Day'),
  numeric('level', '%', 'Level', '%', 2),
  numeric('lower', '%', 'Lower 95 %', '%', 2),
  numeric('upper', '%', 'Upper 95 %', '%', 2),
];

/** What the fit says about each analyzer, in O2 and in CO2 points. */
export const analyzersSchema: Schema = [
  text('analyzer', 'Analyzer'),
  numeric('readings', '1', 'Readings', '', 0),
  numeric('units', '1', 'Units', '', 0),
  /** Changes of hands: times that a unit's next or last reading before was another analyzer's. */
  date('read_from', 'First reading'),
  numeric('compared', '1', 'Compared with others', 'times', 0),
  numeric('o2_bias_pct', '%', 'O2 bias', '%', 2),
  numeric('o2_bias_pct_sd', '%', 'O2 bias, standard deviation', '%', 2),
  numeric('co2_bias_pct', '%', 'CO2 bias', '%', 2),
  numeric('co2_bias_pct_sd', '%', 'CO2 bias, standard deviation', '%', 2),
  /** Standard deviation before any reading spoke: a bias as uncertain as this is confounded. */
  numeric('o2_prior_sd', '%', 'O2 bias, before the readings', '%', 2),
  numeric('co2_prior_sd', '%', 'CO2 bias, before the readings', '%', 2),
  /** The day from which it reads O2 otherwise than before; empty where no such day is shown. */
  date('changed_on', 'Reads otherwise since'),
  numeric('o2_bias_before_pct', '%', 'O2 bias before that day', '%', 2),
  numeric('o2_bias_since_pct', '%', 'O2 bias since that day', '%', 2),
  numeric('o2_bias_since_pct_sd', '%', 'O2 bias since, standard deviation', '%', 2),
  /** See apparent-drift.ts. */
  numeric('apparent_change_pct', '%', 'O2 seen to change when it follows another', '%', 2),
  numeric('change_by_bias_pct', '%', 'of this by the two biases', '%', 2),
  numeric('drift_share', '1', 'Share of the fleet’s apparent drift', '', 3),
];

/** What bringing the readings to reference air does, lane by lane; verdicts: outside, leaving, inside or unknown. */
export const airSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  text('quantity', 'Quantity'),
  numeric('slope_reference_air', '%/a', 'Drift at reference air', '%/year', 2),
  numeric('slope_as_measured', '%/a', 'Drift as measured', '%/year', 2),
  numeric('probability_reference_air', '1', 'Chance of leaving at reference air', '', 2),
  numeric('probability_as_measured', '1', 'Chance of leaving as measured', '', 2),
  text('verdict_reference_air', 'Verdict at reference air'),
  text('verdict_as_measured', 'Verdict as measured'),
];

/** What a gas zone's month added to all its readings, in points of O2; no rows where months were not found to differ. */
export const gasMonthsSchema: Schema = [
  text('gas_zone', 'Gas zone'),
  date('month', 'Month'),
  numeric('units', '1', 'Units read', '', 0),
  numeric('o2_pct', '%', 'O2 added', '%', 2),
  numeric('o2_pct_sd', '%', 'Standard deviation', '%', 2),
];
