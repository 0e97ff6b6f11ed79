import type { CellKind } from '../../shared/cell.ts';
import { compute, type NoteResult } from './compute.ts';
import { type NoteParameters, readParameters } from './parameters.ts';

export const kind: CellKind<NoteParameters, NoteResult> = {
  name: 'note',
  title: 'Note',
  purpose: 'Says in words what the numbers beside it cannot.',
  readParameters,
  reads: () => [],
  sources: () => [],
  sentence: ({ text }) => [{ parameter: 'text', text, entry: { kind: 'text' } }],
  compute,
  describe: ({ text }) => ({ answer: text, tables: [], figures: [], remarks: [] }),
};
