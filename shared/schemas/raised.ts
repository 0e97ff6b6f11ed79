import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a unit, fuel, fire and reason, ranked: what to visit, why, how sure, and what to check first. */
export const raisedSchema: Schema = [
  numeric('rank', '1', 'Rank', '', 0),
  text('unit', 'Unit'),
  text('fuel', 'Fuel'),
  text('fire', 'Fire'),
  text('reason', 'Reason'),
  text('tier', 'Tier'),
  /** Chance that the reason holds at `by_date`, 0..1; unknown for a measured fact. */
  numeric('probability', '1', 'Chance', '', 2),
  date('by_date', 'By'),
  /** Expected share of false entries of the list of its tier and test, this row included, 0..1. */
  numeric('false_discovery_rate', '1', 'Expected false', '', 2),
  text('evidence', 'Evidence'),
  text('check_first', 'Check first'),
  numeric('readings_used', '1', 'Readings', '', 0),
];
