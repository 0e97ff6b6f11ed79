import { date, numeric, type Schema, text } from '../table/schema.ts';

/**
 * One row a finding: what a check has to say about one reading, or about many of one file and analyzer at once.
 * severity is impossible | suspect | note. Unit, day, fire and state are those of the first reading.
 */
export const findingsSchema: Schema = [
  text('severity', 'Severity'),
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('finding', 'What was found'),
  text('action', 'What to do'),
  /** What would put it right, as a correction that someone accepts; empty where nothing is proposed. */
  text('repair', 'Proposed repair'),
  /** kept | value left out | reading left out. */
  text('effect', 'In the calculations'),
  numeric('readings', '1', 'Readings', '', 0),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('check', 'Check'),
  /** Columns of the reading that it is about, space separated. */
  text('columns', 'Columns'),
  text('source_file', 'File'),
  /** Of all readings touched: '4 9-12 40'. */
  text('source_lines', 'Lines'),
];

/** One row for each reading that a finding touches. */
export const touchedSchema: Schema = [
  numeric('finding', '1', 'Finding', '', 0),
  text('check', 'Check'),
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('effect', 'In the calculations'),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];

/** One row a repair that a finding proposes; `corrections` is the list as the corrections cell takes it, in JSON. */
export const repairsSchema: Schema = [
  text('check', 'Check'),
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('finding', 'What was found'),
  text('repair', 'Proposed repair'),
  text('corrections', 'Corrections'),
];

/** One row a check with what it found. */
export const checkCountsSchema: Schema = [
  text('check', 'Check'),
  text('severity', 'Severity'),
  text('title', 'What it looks for'),
  numeric('readings', '1', 'Readings', '', 0),
];
