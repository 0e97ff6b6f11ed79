import type { CellResult } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import * as show from '../../shared/messages/working.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { NOTEBOOK_FORMAT, NOTEBOOK_VERSION, type NotebookDocument } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSources } from './file-source.ts';
import { pathsOf } from './paths-of.ts';
import { type Flags, readFlags } from './read-flags.ts';
import { readProfileFile } from './read-profile-file.ts';
import type { Shell } from './shell.ts';
import { workingLines } from './working-lines.ts';

const FLAGS = {
  readings: 'files',
  register: 'value',
  unit: 'value',
  column: 'value',
  on: 'value',
  fire: 'value',
  state: 'value',
  fuel: 'value',
  profile: 'files',
  'date-order': 'value',
  'single-reading': 'value',
  revised: 'value',
} as const;

/** Prints how one derived number came about: the last reading of the unit that fits what is asked. */
export async function working(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('working', given, FLAGS);
  if (flags.plain.length > 0) throw new CommandError(say.strayArgument('working', flags.plain[0]));
  for (const needed of ['readings', 'unit', 'column'])
    if (flags.files(needed).length === 0)
      throw new CommandError(say.missingFlag('working', needed, usageLine('working')));
  const session = await calculated(flags, shell);
  const result = session.result('derive');
  if (!result) throw new CommandError(faultOf(session));
  const column = flags.value('column') as string;
  const found = await session.workingToFile({ cell: 'derive', column, row: rowAsked(result, flags) });
  if (found.status !== 'value') throw new CommandError(found.status === 'error' ? found.message : usageLine('working'));
  for (const line of workingLines(found.value, shell.width)) shell.out(line);
  return 0;
}

async function calculated(flags: Flags, shell: Shell): Promise<Session> {
  const { paths, leftOut } = await pathsOf(shell.folder, flags.files('readings'), (kind) => kind === 'readings');
  for (const line of leftOut) shell.out(line);
  const files = await fileSources(shell.folder, [...paths, ...flags.files('register')]);
  const keys = [...files.keys()];
  const readings = keys.splice(0, paths.length);
  const answers = await answersOf(flags, shell);
  const register = keys.length > 0 ? 'register' : '';
  const fuel = flags.value('fuel');
  const document: NotebookDocument = {
    format: NOTEBOOK_FORMAT,
    version: NOTEBOOK_VERSION,
    title: 'Working of a number',
    as_of: shell.today(),
    settings: {},
    data: [],
    cells: [
      ...(register === '' ? [] : [{ name: 'register', kind: 'register', parameters: { files: keys } }]),
      { name: 'readings', kind: 'readings', parameters: { files: readings, register, ...answers } },
      {
        name: 'derive',
        kind: 'derive',
        parameters: { readings: 'readings', register, ...(fuel !== undefined && { defaultFuel: fuel }) },
      },
    ],
  };
  const session = new Session(shell.catalogue, shell);
  session.open(document, files);
  await session.calculate();
  return session;
}

/** What an export leaves open and the user answered. */
async function answersOf(flags: Flags, shell: Shell): Promise<Readonly<Record<string, unknown>>> {
  const dateOrder = flags.choice('date-order', ['dmy', 'mdy']);
  const singleReading = flags.choice('single-reading', ['as_found', 'as_left']);
  const revised = flags.choice('revised', ['keep_last', 'keep_both']);
  const profiles = await Promise.all(flags.files('profile').map((file) => readProfileFile(shell.folder, file)));
  return {
    ...(dateOrder && { dateOrder }),
    ...(singleReading && { singleReading }),
    ...(revised && { revised }),
    ...(profiles.length > 0 && { profiles }),
  };
}

function faultOf(session: Session): string {
  for (const { question, phase, message } of session.states()) {
    if (question) return say.question('working', question.message, question.remedy);
    if (phase === 'failed') return message;
  }
  return usageLine('working');
}

/** The last row of the unit on the day, at the fire and in the state that were asked for. */
function rowAsked({ tables }: CellResult, flags: Flags): number {
  const { derived } = tables;
  const unit = flags.value('unit') as string;
  const day = flags.day('on');
  const wanted = ['fire', 'state'].map((name) => [textsOf(derived, name), flags.value(name)] as const);
  const units = textsOf(derived, 'unit');
  const taken = numbersOf(derived, 'taken_at');
  for (let row = derived.rows - 1; row >= 0; row--) {
    if (textAt(units, row) !== unit) continue;
    if (day !== undefined && Math.floor(taken[row]) !== readIsoDate(day)) continue;
    if (wanted.every(([column, value]) => value === undefined || textAt(column, row) === value)) return row;
  }
  throw new CommandError(show.noSuchReading(unit, day ?? '', flags.value('fire') ?? '', flags.value('state') ?? ''));
}
