import type { CellKind } from '../../shared/cell.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { compute, type ReadingsResult } from './compute.ts';
import { describe } from './describe.ts';
import { files } from './files.ts';
import { type ReadingsParameters, readParameters } from './parameters.ts';

export const kind: CellKind<ReadingsParameters, ReadingsResult> = {
  name: 'readings',
  title: 'Readings',
  purpose: 'Brings exports of readings in: every row accepted, set aside with its reason, or named a duplicate.',
  readParameters,
  reads: ({ register }) => (register === '' ? [] : [{ cell: register, tables: ['units'] }]),
  sources: ({ files }) => files,
  sentence: (parameters) => [
    'Read ',
    fileList(parameters.files),
    ' with unit ids as spelled in ',
    {
      parameter: 'register',
      text: parameters.register || 'no register',
      entry: { kind: 'cell', kinds: ['register'], optional: true },
    },
    '; dates such as 3/4 have ',
    {
      parameter: 'dateOrder',
      text: DATE_ORDERS.find(({ value }) => value === parameters.dateOrder)?.label ?? '',
      entry: { kind: 'choice', options: DATE_ORDERS },
    },
    ', and a single reading of a visit is ',
    {
      parameter: 'singleReading',
      text: SINGLE_READINGS.find(({ value }) => value === parameters.singleReading)?.label ?? '',
      entry: { kind: 'choice', options: SINGLE_READINGS },
    },
    '; of a reading that stands in two files with other values ',
    {
      parameter: 'revised',
      text: REVISED.find(({ value }) => value === parameters.revised)?.label ?? '',
      entry: { kind: 'choice', options: REVISED },
    },
    '.',
  ],
  compute,
  describe,
  files,
};

const DATE_ORDERS = [
  { value: '', label: 'the order that the file shows' },
  { value: 'dmy', label: 'the day first' },
  { value: 'mdy', label: 'the month first' },
];
const SINGLE_READINGS = [
  { value: '', label: 'of unknown state' },
  { value: 'as_found', label: 'as found' },
  { value: 'as_left', label: 'as left' },
];
const REVISED = [
  { value: '', label: 'it is asked which counts' },
  { value: 'keep_last', label: 'the copy in the last file counts' },
  { value: 'keep_both', label: 'both count' },
];
