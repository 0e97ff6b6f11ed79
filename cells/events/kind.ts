import type { CellKind } from '../../shared/cell.ts';
import { eventsAnswer } from '../../shared/messages/import.ts';
import { listKind } from '../../shared/readings/list-kind.ts';
import { eventsSchema } from '../../shared/schemas/events.ts';
import { toldEventsSchema } from '../../shared/schemas/readings.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { compute, type EventsResult } from './compute.ts';
import { type EventsParameters, readParameters } from './parameters.ts';

export const kind: CellKind<EventsParameters, EventsResult> = listKind({
  name: 'events',
  title: 'Events',
  purpose: 'Says what happened to units between the readings: what starts a new series, what stops the calendar.',
  begins: 'What happened to the units stands in ',
  table: 'events',
  schema: eventsSchema,
  answer: eventsAnswer,
  readParameters,
  compute,
  reads: ({ notes }) => readOf(notes, 'told-events'),
  remarks: ({ remarks }) => remarks,
  further: [{ table: 'told-events', title: 'Told by notes', schema: toldEventsSchema }],
});
