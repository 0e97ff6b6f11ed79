import type { CellKind } from '../../shared/cell.ts';
import { emptyNote, writeHere } from '../../shared/messages/note.ts';
import { textBlank } from '../../shared/sentence/text-blank.ts';
import { compute, type NoteResult } from './compute.ts';
import { type NoteParameters, readParameters } from './parameters.ts';

export const kind: CellKind<NoteParameters, NoteResult> = {
  name: 'note',
  title: 'Note',
  purpose: 'Says in words what the numbers beside it cannot.',
  readParameters,
  reads: () => [],
  sources: () => [],
  sentence: ({ text }) => [textBlank('text', 'note', text.trim() === '' ? writeHere() : text)],
  compute,
  describe: ({ text }) => ({ answer: text.trim() === '' ? emptyNote() : text, tables: [], figures: [], remarks: [] }),
};
