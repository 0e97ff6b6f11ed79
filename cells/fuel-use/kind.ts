import type { CellKind } from '../../shared/cell.ts';
import * as say from '../../shared/messages/import.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { faultRemarks, leftOut } from '../../shared/readings/told-faults.ts';
import { fuelUseSchema } from '../../shared/schemas/fuel-use.ts';
import { faultsSchema } from '../../shared/schemas/readings.ts';
import { textsOf } from '../../shared/table/columns.ts';
import { shownColumns } from '../../shared/table/schema.ts';
import { compute, type FuelUseResult } from './compute.ts';
import { type FuelUseParameters, readParameters } from './parameters.ts';

export const kind: CellKind<FuelUseParameters, FuelUseResult> = {
  name: 'fuel-use',
  title: 'Fuel use',
  purpose: 'Says what fuel the units used and what it cost, so that savings can be given in fuel and money.',
  readParameters,
  reads: ({ register }) => (register === '' ? [] : [{ cell: register, tables: ['units'] }]),
  sources: ({ files }) => files,
  sentence: ({ files, register }) => [
    'What the units used stands in ',
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
    answer: say.fuelUseAnswer(tables['use'].rows, new Set(textsOf(tables['use'], 'unit').codes).size, leftOut(faults)),
    tables: [
      { table: 'use', title: 'Fuel use', columns: shownColumns(fuelUseSchema) },
      { table: 'faults', title: 'Not used', columns: shownColumns(faultsSchema) },
    ],
    figures: [],
    remarks: faultRemarks(faults, notes),
  }),
};
