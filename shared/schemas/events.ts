import { date, type Schema, text } from '../table/schema.ts';

/** One row = one thing that happened to a unit, by unit and day. */
export const eventsSchema: Schema = [
  text('unit', 'Unit'),
  date('on', 'On'),
  text('event', 'Event'),
  text('note', 'Note'),
];
