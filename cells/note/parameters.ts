import { badNote } from '../../shared/messages/note.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

export interface NoteParameters {
  readonly text: string;
}

export function readParameters(raw: unknown): Outcome<NoteParameters> {
  const { text = '' } = (raw ?? {}) as { text?: unknown };
  return typeof text === 'string' ? succeed({ text }) : fail(badNote(JSON.stringify(text) ?? 'nothing'));
}
