import type { CellResult } from '../../shared/cell.ts';
import type { Working } from '../../shared/formula/working.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import * as show from '../../shared/messages/working.ts';
import { readIsoDate, writeIsoDate } from '../../shared/quantities/dates.ts';
import { sourceTitle } from '../../shared/sources/source-title.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { NOTEBOOK_FORMAT, NOTEBOOK_VERSION, type NotebookDocument } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSources } from './file-source.ts';
import { type Flags, readFlags } from './read-flags.ts';
import type { Shell } from './shell.ts';

const FLAGS = {
  readings: 'files',
  register: 'value',
  unit: 'value',
  column: 'value',
  on: 'value',
  fire: 'value',
  state: 'value',
  fuel: 'value',
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
  const readings = session.result('readings')?.tables.accepted;
  const kind = shell.catalogue.get('derive');
  if (!result || !readings || !kind?.working) throw new CommandError(faultOf(session));
  const row = rowAsked(result, flags);
  const found = kind.working(result, flags.value('column') as string, row);
  if (found.status !== 'value') throw new CommandError(found.status === 'error' ? found.message : usageLine('working'));
  for (const line of workingLines(found.value, readings, row)) shell.out(line);
  return 0;
}

async function calculated(flags: Flags, shell: Shell): Promise<Session> {
  const files = await fileSources(shell.folder, [...flags.files('readings'), ...flags.files('register')]);
  const keys = [...files.keys()];
  const readings = keys.splice(0, flags.files('readings').length);
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
      { name: 'readings', kind: 'readings', parameters: { files: readings, register } },
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

function workingLines({ title, steps, inputs, budget }: Working, readings: Table, row: number): string[] {
  const text = (name: string): string => textAt(textsOf(readings, name), row);
  const number = (name: string): number => numbersOf(readings, name)[row];
  const last = steps[steps.length - 1];
  return [
    show.workingHead(title, text('unit'), writeIsoDate(number('taken_at')), text('fire'), text('state')),
    show.workingOrigin(text('source_file'), number('source_line')),
    '',
    ...inputs.map((input) => show.workingInput(input.title, input.symbol, input.shown, input.shownSd)),
    '',
    ...steps.flatMap((step) => [
      step.title,
      `  ${step.symbols}`,
      `  ${step.numbers}`,
      `  = ${step.result}`,
      `  ${sourceTitle(step.source)}`,
    ]),
    '',
    show.workingSd(last.sd, last.unit),
    ...budget.map((share) => show.workingShare(share.title, share.percent)),
  ];
}
