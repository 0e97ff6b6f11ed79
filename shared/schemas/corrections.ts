import { date, numeric, type Schema, text } from '../table/schema.ts';

/** One row a correction, in the order in which they take effect. */
export const correctionsSchema: Schema = [
  text('id', 'Id'),
  text('action', 'Action'),
  text('unit', 'Unit'),
  text('taken_at', 'Taken'),
  text('fire', 'Fire'),
  text('state', 'State'),
  text('column', 'Column'),
  /** As imported, where one row is touched. */
  text('before', 'Before'),
  text('after', 'After'),
  text('reason', 'Reason'),
  text('initials', 'By'),
  date('made_on', 'Made on'),
  /** applied | overruled (a later one of the same row and column counts) | lifted | lost (it finds no reading). */
  text('status', 'Status'),
  numeric('rows', '1', 'Readings', '', 0),
];

/** Beside the corrected readings, row by row: the number of the row in the readings as they were before, from 0. */
export const importedRowsSchema: Schema = [numeric('row', '1', 'Row as imported', '', 0)];
