import type { CellState } from '../../shared/cell-state.ts';
import * as say from '../../shared/messages/command.ts';
import { remedyByCommand } from '../../shared/outcome.ts';
import { textAt, textsOf } from '../../shared/table/columns.ts';
import type { Session } from '../notebook/session.ts';
import { type WrittenText, writtenFiles } from '../notebook/written-files.ts';
import { CommandError } from './command-error.ts';
import { EarlyTables } from './early-tables.ts';
import type { OutFolder, StagedText } from './out-folder.ts';
import type { Shell } from './shell.ts';

/** From the gravest on; `--fail-on` names the mildest that still counts. */
export const TIERS = ['safety', 'open', 'supply', 'tolerance', 'cost', 'data'] as const;
export type Tier = (typeof TIERS)[number];

const FAILED_CELL = 3;
const RAISED = 4;

export interface Wanted {
  readonly failOn: Tier | undefined;
  /** Whether parameters come from the command itself, so that a bad one is a fault of its usage. */
  readonly refuseFaults: boolean;
}

/**
 * Calculates the session and writes its files. A question, or a cell that cannot read its file or its parameters, ends the
 * command before anything is written; any other failed cell leaves the others' files and exit code 3.
 */
export async function finish(session: Session, out: OutFolder, wanted: Wanted, shell: Shell): Promise<number> {
  const { failOn } = wanted;
  const early = shell.scribe && new EarlyTables(session, out, shell.scribe);
  try {
    await session.calculate();
    refuseWhatOnlyTheUserSettles(session, wanted);
  } catch (cause) {
    await early?.end();
    await out.discard();
    throw cause;
  }
  early?.stop();
  await out.write(writtenFiles(session).map((file) => staged(file, early)));
  const states = session.states();
  for (const { name, phase, description } of states)
    if (phase === 'done' && description) shell.out(`${name}: ${firstLine(description.answer)}`);
  for (const state of states) if (state.phase !== 'done') shell.err(troubleOf(state));
  if (states.some(({ phase }) => phase !== 'done')) return FAILED_CELL;
  const raised = failOn === undefined ? 0 : raisedFrom(session, failOn);
  if (raised === 0) return 0;
  shell.err(say.failOn(failOn as Tier, raised));
  return RAISED;
}

function staged(file: WrittenText, early: EarlyTables | undefined): StagedText {
  const found = early?.find(file.cell, file.given);
  return found ? { ...file, written: { path: found.path, done: found.written } } : file;
}

function refuseWhatOnlyTheUserSettles(session: Session, { refuseFaults }: Wanted): void {
  for (const state of session.states()) {
    if (state.question)
      throw new CommandError(say.question(state.name, state.question.message, remedyByCommand(state.question)));
    const refused = session.importsFiles(state.name) || (refuseFaults && session.fault(state.name) !== '');
    if (state.phase === 'failed' && refused) throw new CommandError(troubleOf(state));
  }
}

function troubleOf({ name, message, waitsFor }: CellState): string {
  return firstLine(waitsFor.length > 0 ? say.cellWaits(name, waitsFor.join(', ')) : say.cellFailed(name, message));
}

const firstLine = (text: string): string => text.replaceAll(/\s*\n\s*/g, ' ');

/** Units raised in the given tier or a graver one, in any cell of the notebook that raises. */
function raisedFrom(session: Session, mildest: Tier): number {
  const grave = new Set<string>(TIERS.slice(0, TIERS.indexOf(mildest) + 1));
  const units = new Set<string>();
  for (const { name, kind } of session.states()) {
    const raised = kind === 'raise' ? session.result(name)?.tables.raised : undefined;
    if (!raised) continue;
    const [tier, unit] = [textsOf(raised, 'tier'), textsOf(raised, 'unit')];
    for (let row = 0; row < raised.rows; row++) if (grave.has(textAt(tier, row))) units.add(textAt(unit, row));
  }
  return units.size;
}
