import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import * as show from '../../shared/messages/working.ts';
import { remedyByCommand } from '../../shared/outcome.ts';
import { readIsoDate } from '../../shared/quantities/dates.ts';
import { DATE_ORDER_NAMES } from '../../shared/readings/date-order.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { dataNotices } from '../notebook/data-notices.ts';
import { NOTEBOOK_FORMAT, NOTEBOOK_VERSION, type NotebookDocument } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { openNotebook } from './calculate.ts';
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
  cell: 'value',
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

/**
 * Prints how one derived number came about: of the last row of the unit that fits what is asked, over exports of readings or in
 * any cell of a saved notebook.
 */
export async function working(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('working', given, FLAGS);
  const [notebook, ...more] = flags.plain;
  if (more.length > 0) throw new CommandError(say.oneNotebook('working', flags.plain.length));
  for (const needed of ['unit', 'column', ...(notebook === undefined ? ['readings'] : [])])
    if (flags.files(needed).length === 0)
      throw new CommandError(say.missingFlag('working', needed, usageLine('working')));
  const stray = notebook === undefined ? undefined : OVER_EXPORTS.find((flag) => flags.files(flag).length > 0);
  if (stray !== undefined) throw new CommandError(show.notWithNotebook(stray));
  const session = notebook === undefined ? await calculated(flags, shell) : await opened(notebook, shell);
  const cell = flags.value('cell') ?? 'derive';
  const { description } = session.state(cell) ?? {};
  const table = session.result(cell)?.tables[description?.tables[0]?.table ?? ''];
  if (!table) throw new CommandError(session.state(cell) ? faultOf(session) : show.noSuchCell(cell));
  const column = flags.value('column') as string;
  const found = await session.workingToFile({ cell, column, row: rowAsked(table, cell, flags) });
  if (found.status !== 'value') throw new CommandError(found.status === 'error' ? found.message : usageLine('working'));
  for (const line of workingLines(found.value, shell.width)) shell.out(line);
  return 0;
}

/** What a notebook says for itself. */
const OVER_EXPORTS = ['readings', 'register', 'fuel', 'profile', 'date-order', 'single-reading', 'revised'] as const;

async function opened(notebook: string, shell: Shell): Promise<Session> {
  const { document, files } = await openNotebook(shell.folder, notebook);
  for (const notice of dataNotices(document, files)) shell.err(notice);
  const session = new Session(shell.catalogue, shell);
  session.open(document, files);
  await session.calculate();
  return session;
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
  const dateOrder = flags.choice('date-order', DATE_ORDER_NAMES);
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
    if (question) return say.question('working', question.message, remedyByCommand(question));
    if (phase === 'failed') return message;
  }
  return usageLine('working');
}

/** The last row of the unit on the day, at the fire and in the state that were asked for. */
function rowAsked(table: Table, cell: string, flags: Flags): number {
  const unit = flags.value('unit') as string;
  const day = flags.day('on');
  const asked = ['fire', 'state'].flatMap((name) => {
    const value = flags.value(name);
    return value === undefined ? [] : [[name, value] as const];
  });
  for (const name of ['unit', ...(day === undefined ? [] : ['taken_at']), ...asked.map(([name]) => name)])
    if (!table.columns.has(name)) throw new CommandError(show.noColumnToChoose(cell, name));
  const wanted = asked.map(([name, value]) => [textsOf(table, name), value] as const);
  const units = textsOf(table, 'unit');
  const taken = day === undefined ? undefined : numbersOf(table, 'taken_at');
  for (let row = table.rows - 1; row >= 0; row--) {
    if (textAt(units, row) !== unit) continue;
    if (taken && Math.floor(taken[row]) !== readIsoDate(day as string)) continue;
    if (wanted.every(([column, value]) => textAt(column, row) === value)) return row;
  }
  const [fire, state] = [flags.value('fire') ?? '', flags.value('state') ?? ''];
  throw new CommandError(
    cell === 'derive' ? show.noSuchReading(unit, day ?? '', fire, state) : show.noSuchRow(cell, unit, fire),
  );
}
