import type { CellKind } from '../../shared/cell.ts';
import * as say from '../../shared/messages/checks.ts';
import { checkCountsSchema, findingsSchema, touchedSchema } from '../../shared/schemas/findings.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { readingsBlank } from '../../shared/sentence/readings-blank.ts';
import { registerBlank } from '../../shared/sentence/register-blank.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { type ChecksResult, compute } from './compute.ts';
import { type ChecksParameters, readParameters } from './parameters.ts';

export const kind: CellKind<ChecksParameters, ChecksResult> = {
  name: 'checks',
  title: 'Checks',
  purpose:
    'Finds what cannot be or looks wrong in the readings; impossible values stay out of the calculations, nothing is repaired.',
  readParameters,
  reads: ({ readings, register }) => [...readOf(readings, 'accepted'), ...readOf(register, 'units', 'supply-limits')],
  sources: () => [],
  sentence: ({ readings, register, suspects }) => [
    'Check the readings of ',
    readingsBlank(readings),
    ' by the fuels and buildings of ',
    registerBlank(register),
    '; impossible values are left out, suspect readings are ',
    choiceBlank('suspects', 'suspect readings', suspects, [
      { value: 'in', label: 'used' },
      { value: 'out', label: 'left out' },
    ]),
    '.',
  ],
  compute,
  describe: ({ tables, bySeverity, lines, remarks }) => ({
    answer: say.answer(tables['accepted'].rows, bySeverity.impossible, bySeverity.suspect, bySeverity.note, lines),
    tables: [
      { table: 'findings', title: 'What was found', columns: shownColumns(findingsSchema) },
      { table: 'touched', title: 'Readings touched', columns: shownColumns(touchedSchema) },
      { table: 'counts', title: 'Checks', columns: shownColumns(checkCountsSchema) },
      { table: 'accepted', title: 'Checked readings', columns: shownColumns(readingsSchema) },
    ],
    figures: [],
    remarks,
  }),
  files: ({ tables }) => [{ name: 'checks.csv', table: tables['findings'] }],
};
