import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a unit and fuel: what its last visit with both states saved, gross efficiencies at reference air. */
export const savingsSchema: Schema = [
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  date('found_on', 'Found'),
  date('left_on', 'Left'),
  numeric('efficiency_found_pct', '%', 'Efficiency found (gross)', '%', 2),
  numeric('efficiency_left_pct', '%', 'Efficiency left (gross)', '%', 2),
  numeric('fuel_saved_pct', '%', 'Fuel saved', '%', 2),
  numeric('fuel_saved_pct_lower', '%', 'Fuel saved, lower 90 %', '%', 2),
  numeric('fuel_saved_pct_upper', '%', 'Fuel saved, upper 90 %', '%', 2),
  /** Money a year in the currency of the fuel price. */
  numeric('cost_saved', '1', 'Cost saved a year', '', 0),
  numeric('cost_saved_lower', '1', 'Cost saved, lower', '', 0),
  numeric('cost_saved_upper', '1', 'Cost saved, upper', '', 0),
  numeric('co2e_saved_kg', 'kg', 'CO2e saved a year', 'kg', 0),
  text('counterfactual', 'Compared with'),
  numeric('persistence_years', 'a', 'Lasts', 'years', 1),
  text('fuel_use_source', 'Fuel use from'),
  /** yes, no or unknown: whether the saving can be told from nothing. */
  text('distinguishable', 'Told from nothing'),
  /** What the change of O2 alone saved, the flue being as hot as found: a cold start fakes savings. */
  numeric('fuel_saved_pct_same_flue', '%', 'Fuel saved, flue as found', '%', 2),
];
