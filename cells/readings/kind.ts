import type { CellKind } from '../../shared/cell.ts';
import { fileList } from '../../shared/readings/file-list.ts';
import { choiceBlank } from '../../shared/sentence/choice-blank.ts';
import { readOf } from '../../shared/sentence/read-of.ts';
import { registerBlank } from '../../shared/sentence/register-blank.ts';
import { compute, type ReadingsResult } from './compute.ts';
import { describe } from './describe.ts';
import { files } from './files.ts';
import { origins } from './origins.ts';
import { type ReadingsParameters, readParameters } from './parameters.ts';

export const kind: CellKind<ReadingsParameters, ReadingsResult> = {
  name: 'readings',
  title: 'Readings',
  purpose: 'Brings exports of readings in: every row accepted, set aside with its reason, or named a duplicate.',
  readParameters,
  reads: ({ register }) => readOf(register, 'units'),
  sources: ({ files }) => files,
  sentence: (parameters) => [
    'Read ',
    fileList(parameters.files),
    ' with unit ids as spelled in ',
    registerBlank(parameters.register),
    '; dates such as 3/4 have ',
    choiceBlank('dateOrder', 'order of day and month', parameters.dateOrder, DATE_ORDERS),
    ', and a single reading of a visit is ',
    choiceBlank('singleReading', 'state of a single reading', parameters.singleReading, SINGLE_READINGS),
    '; of a reading that stands in two files with other values ',
    choiceBlank('revised', 'reading with other values in two files', parameters.revised, REVISED),
    '.',
  ],
  compute,
  describe,
  files,
  origins,
};

const DATE_ORDERS = [
  { value: '', label: 'the order that the file shows' },
  { value: 'dmy', label: 'the day first' },
  { value: 'mdy', label: 'the month first' },
  { value: 'ymd', label: 'the year first' },
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
