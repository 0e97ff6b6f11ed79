import type { CellResult } from '../../shared/cell.ts';
import { type Outcome, succeed } from '../../shared/outcome.ts';
import type { NoteParameters } from './parameters.ts';

export interface NoteResult extends CellResult {
  readonly text: string;
}

export async function compute(parameters: NoteParameters): Promise<Outcome<NoteResult>> {
  return succeed({ text: parameters.text, tables: {} });
}
