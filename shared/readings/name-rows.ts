import { nameStates } from './name-states.ts';
import { applyNaming, isAccepted, isOpen, NAMINGS, type Naming, type NamingKind } from './naming.ts';
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

/** A proposal and whether the user accepts it. */
export interface SettledNaming {
  readonly naming: Naming;
  readonly accepted: boolean;
}

export interface RowsNamed {
  readonly proposals: readonly SettledNaming[];
  /** Readings that got a state by --single-reading. */
  readonly states: number;
  /** Readings that any answer named. */
  readonly changed: number;
}

/** What evidence says of fuel, fire and state where the file does not; only what the user accepted is written. */
export function nameRows(columns: ReadingColumns, order: Int32Array, answers: NamingAnswers): RowsNamed {
  const { accept, singleReading } = answers;
  const proposals: SettledNaming[] = [];
  const settle = (namings: readonly Naming[]): void => {
    for (const naming of namings) {
      const accepted = isAccepted(naming, accept);
      if (accepted) applyNaming(columns, naming);
      proposals.push({ naming, accepted });
    }
  };
  if (isOpen(columns, 'fuels')) settle(proposeFuels(columns, order, answers.fuelled));
  if (isOpen(columns, 'fires')) settle(proposeFires(columns, order, answers.singleStage));
  const statesOpen = isOpen(columns, 'states');
  const states = statesOpen && singleReading !== '' ? nameStates(columns, order, singleReading) : 0;
  if (statesOpen) settle(proposeStates(columns, order));
  const changed = proposals.reduce((sum, { naming, accepted }) => (accepted ? sum + naming.readings : sum), states);
  return { proposals, states, changed };
}

/** All namings of one kind that are accepted, or all that are not. */
export interface NamingsTold {
  readonly kind: NamingKind;
  readonly accepted: boolean;
  readonly readings: number;
  readonly units: number;
  /** The one with the most readings, and its evidence. */
  readonly unit: string;
  readonly evidence: string;
}

/** What there is to say of the proposals, kind by kind. */
export function tellNamings(proposals: readonly SettledNaming[]): NamingsTold[] {
  return NAMINGS.flatMap((kind) =>
    [false, true].flatMap((accepted) => {
      const alike = proposals.filter((one) => one.naming.kind === kind && one.accepted === accepted);
      if (alike.length === 0) return [];
      const { naming: most } = alike.reduce((best, one) => (one.naming.readings > best.naming.readings ? one : best));
      const readings = alike.reduce((sum, { naming }) => sum + naming.readings, 0);
      return { kind, accepted, readings, units: alike.length, unit: most.unit, evidence: most.evidence };
    }),
  );
}
