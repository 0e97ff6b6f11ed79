import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a finding: what a check has to say about one reading. severity is impossible | suspect | note. */
export const findingsSchema: Schema = [
  text('severity', 'Severity'),
  text('check', 'Check'),
  text('unit', 'Unit'),
  date('taken_at', 'Taken'),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('finding', 'What was found'),
  text('action', 'What to do'),
  /** Columns of the reading that it is about, space separated. */
  text('columns', 'Columns'),
  /** kept | value left out | reading left out. */
  text('effect', 'In the calculations'),
  text('source_file', 'File'),
  numeric('source_line', '1', 'Line', '', 0),
];

/** One row a check with what it found. */
export const checkCountsSchema: Schema = [
  text('check', 'Check'),
  text('severity', 'Severity'),
  text('title', 'What it looks for'),
  numeric('findings', '1', 'Found', '', 0),
];
