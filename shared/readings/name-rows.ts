import { nameStates } from './name-states.ts';
import { applyNaming, isAccepted, isOpen, type Naming } from './naming.ts';
import { proposeFires } from './propose-fires.ts';
import { proposeFuels } from './propose-fuels.ts';
import { proposeStates } from './propose-states.ts';
import type { ReadingColumns } from './reading-columns.ts';

export interface NamingAnswers {
  readonly singleReading: '' | 'as_found' | 'as_left';
  /** What the user accepts of the proposals; see isAccepted. */
  readonly accept: readonly string[];
  /** Units whose fuel the register names, and those that it calls single-stage. */
  readonly fuelled: ReadonlySet<string>;
  readonly singleStage: ReadonlySet<string>;
}

export interface RowsNamed {
  readonly proposals: readonly (Naming & { readonly accepted: boolean })[];
  /** Readings that got a state by --single-reading. */
  readonly states: number;
  /** Readings that any answer named. */
  readonly changed: number;
}

/** What evidence says of fuel, fire and state where the file does not; only what the user accepted is written. */
export function nameRows(columns: ReadingColumns, order: Int32Array, answers: NamingAnswers): RowsNamed {
  const { accept, singleReading } = answers;
  const proposals: (Naming & { accepted: boolean })[] = [];
  const settle = (namings: readonly Naming[]): void => {
    for (const naming of namings) {
      const accepted = isAccepted(naming, accept);
      if (accepted) applyNaming(columns, naming);
      proposals.push({ ...naming, accepted });
    }
  };
  if (isOpen(columns, 'fuels')) settle(proposeFuels(columns, order, answers.fuelled));
  if (isOpen(columns, 'fires')) settle(proposeFires(columns, order, answers.singleStage));
  const statesOpen = isOpen(columns, 'states');
  const states = statesOpen && singleReading !== '' ? nameStates(columns, order, singleReading) : 0;
  if (statesOpen) settle(proposeStates(columns, order));
  const changed = proposals.filter(({ accepted }) => accepted).reduce((sum, { readings }) => sum + readings, states);
  return { proposals, states, changed };
}
