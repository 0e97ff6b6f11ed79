import type { CellKind } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { eventsSchema } from '../../shared/schemas/events.ts';
import { textsOf } from '../../shared/table/columns.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type EventsResult } from './compute.ts';
import { type EventsParameters, readParameters } from './parameters.ts';

export const kind: CellKind<EventsParameters, EventsResult> = {
  name: 'events',
  title: 'Events',
  purpose: 'Says what happened to units between the readings: what starts a new series, what stops the calendar.',
  readParameters,
  reads: ({ register }) => (register === '' ? [] : [{ cell: register, tables: ['units'] }]),
  sources: ({ files }) => files,
  sentence: ({ files, register }) => [
    'What happened to the units stands in ',
    fileList(files),
    ', with unit ids as spelled in ',
    { parameter: 'register', text: register || 'no register', entry: { kind: 'cell', kinds: ['register'] } },
    '.',
  ],
  compute,
  describe: ({ tables, faults }) => ({
    answer: say.eventsAnswer(tables['events'].rows, new Set(textsOf(tables['events'], 'unit').codes).size),
    tables: [{ table: 'events', title: 'Events', columns: shownColumns(eventsSchema) }],
    figures: [],
    remarks:
      faults.length === 0
        ? []
        : [
            {
              severity: 'warning',
              text: say.cellFaults(faults.length, faults[0].file, faults[0].line, faults[0].reason),
            },
          ],
  }),
};
