import type { CellKind } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { faultRemarks, leftOut } from '../../shared/readings/told-faults.ts';
import { eventsSchema } from '../../shared/schemas/events.ts';
import { faultsSchema } from '../../shared/schemas/readings.ts';
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
    {
      parameter: 'register',
      text: register || 'no register',
      entry: { kind: 'cell', kinds: ['register'], optional: true },
    },
    '.',
  ],
  compute,
  describe: ({ tables, faults, notes }) => ({
    answer: say.eventsAnswer(
      tables['events'].rows,
      new Set(textsOf(tables['events'], 'unit').codes).size,
      leftOut(faults),
    ),
    tables: [
      { table: 'events', title: 'Events', columns: shownColumns(eventsSchema) },
      { table: 'faults', title: 'Not used', columns: shownColumns(faultsSchema) },
    ],
    figures: [],
    remarks: faultRemarks(faults, notes),
  }),
};
