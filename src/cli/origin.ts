import type { CellResult } from '../../shared/cell.ts';
import * as say from '../../shared/messages/command.ts';
import { usageLine } from '../../shared/messages/usage.ts';
import { noSuchReading } from '../../shared/messages/working.ts';
import { remedyByCommand } from '../../shared/outcome.ts';
import { readIsoDate, writeIsoDate } from '../../shared/quantities/dates.ts';
import { twelveDigits } from '../../shared/quantities/twelve-digits.ts';
import { DATE_ORDER_NAMES } from '../../shared/readings/date-order.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';
import { workedReading } from '../../shared/working/worked-reading-of.ts';
import { NOTEBOOK_FORMAT, NOTEBOOK_VERSION } from '../notebook/document.ts';
import { Session } from '../notebook/session.ts';
import { CommandError } from './command-error.ts';
import { fileSources } from './file-source.ts';
import { pathsOf } from './paths-of.ts';
import { type Flags, readFlags } from './read-flags.ts';
import { readProfileFile } from './read-profile-file.ts';
import type { Shell } from './shell.ts';

const FLAGS = {
  readings: 'files',
  unit: 'value',
  register: 'value',
  on: 'value',
  fire: 'value',
  state: 'value',
  profile: 'files',
  'date-order': 'value',
  'single-reading': 'value',
  revised: 'value',
  accept: 'files',
} as const;
const PLACE = new Set(['source_file', 'source_line']);

/** Prints where each value of an accepted reading stands: file, line, column and the text as written. */
export async function origin(given: readonly string[], shell: Shell): Promise<number> {
  const flags = readFlags('origin', given, FLAGS);
  if (flags.plain.length > 0) throw new CommandError(say.strayArgument('origin', flags.plain[0]));
  for (const needed of ['readings', 'unit'])
    if (flags.files(needed).length === 0)
      throw new CommandError(say.missingFlag('origin', needed, usageLine('origin')));
  const { paths } = await pathsOf(shell.folder, flags.files('readings'), (kind) => kind === 'readings');
  const files = await fileSources(shell.folder, [...paths, ...flags.files('register')]);
  const session = await imported(flags, [...files.keys()], paths.length, files, shell);
  const result = session.result('readings');
  const kind = shell.catalogue.get('readings');
  if (!result || !kind?.origins) throw new CommandError(faultOf(session));
  const row = rowAsked(result.tables['accepted'], flags);
  await tell(result, row, kind.origins, (name) => [...files.values()].find((file) => file.name === name), shell);
  return 0;
}

async function imported(
  flags: Flags,
  keys: readonly string[],
  readings: number,
  files: Awaited<ReturnType<typeof fileSources>>,
  shell: Shell,
): Promise<Session> {
  const profiles = await Promise.all(flags.files('profile').map((file) => readProfileFile(shell.folder, file)));
  const [dateOrder, revised] = [
    flags.choice('date-order', DATE_ORDER_NAMES),
    flags.choice('revised', ['keep_last', 'keep_both']),
  ];
  const singleReading = flags.choice('single-reading', ['as_found', 'as_left']);
  // What becomes of notes is no matter of readings.
  const accept = flags.files('accept').filter((one) => !/^events(?:$|:)/.test(one));
  const answers = {
    profiles,
    ...(dateOrder && { dateOrder }),
    ...(singleReading && { singleReading }),
    ...(revised && { revised }),
    ...(accept.length > 0 && { accept }),
  };
  const register = keys.length > readings ? 'register' : '';
  const session = new Session(shell.catalogue, shell);
  const cells = [
    ...(register === '' ? [] : [{ name: 'register', kind: 'register', parameters: { files: keys.slice(readings) } }]),
    { name: 'readings', kind: 'readings', parameters: { files: keys.slice(0, readings), register, ...answers } },
  ];
  const head = { format: NOTEBOOK_FORMAT, version: NOTEBOOK_VERSION, title: 'Origin of a reading' } as const;
  session.open({ ...head, as_of: shell.today(), settings: {}, data: [], cells }, files);
  await session.calculate();
  return session;
}

function faultOf(session: Session): string {
  for (const { question, phase, message } of session.states()) {
    if (question) return say.question('origin', question.message, remedyByCommand(question));
    if (phase === 'failed') return message;
  }
  return usageLine('origin');
}

/** The last reading of the unit on the day, at the fire and in the state that were asked for. */
function rowAsked(accepted: Table, flags: Flags): number {
  const [unit, day] = [flags.value('unit') as string, flags.day('on')];
  const wanted = ['fire', 'state'].map((name) => [textsOf(accepted, name), flags.value(name)] as const);
  const units = textsOf(accepted, 'unit');
  const taken = numbersOf(accepted, 'taken_at');
  for (let row = accepted.rows - 1; row >= 0; row--) {
    if (textAt(units, row) !== unit) continue;
    if (day !== undefined && Math.floor(taken[row]) !== readIsoDate(day)) continue;
    if (wanted.every(([column, value]) => value === undefined || textAt(column, row) === value)) return row;
  }
  throw new CommandError(noSuchReading(unit, day ?? '', flags.value('fire') ?? '', flags.value('state') ?? ''));
}

type Origins = NonNullable<ReturnType<Shell['catalogue']['get']>>['origins'];

async function tell(
  result: CellResult,
  row: number,
  origins: NonNullable<Origins>,
  source: Parameters<NonNullable<Origins>>[2],
  shell: Shell,
): Promise<void> {
  const accepted = result.tables['accepted'];
  const known = readingsSchema
    .map(({ name }) => name)
    .filter((name) => !PLACE.has(name) && valueAt(accepted, name, row));
  const reading = workedReading(accepted, accepted, row, known);
  const found = (await origins(result, [reading], source)).get(reading);
  if (!found || found.text === '') throw new CommandError(say.notAsImported(reading.file));
  shell.out(say.originHead(reading.unit, reading.takenAt, reading.fire, reading.state, reading.file, reading.line));
  for (const line of found.text.split('\n')) shell.out(`  ${line}`);
  const told = new Set<string>();
  for (const { field, head, position, text } of found.cells) {
    told.add(field);
    shell.out(say.originCell(head, position, text, field, valueAt(accepted, field, row)));
  }
  for (const { field, head } of found.byHeads) {
    told.add(field);
    shell.out(say.originByHead(field, valueAt(accepted, field, row), head));
  }
  for (const name of known) if (!told.has(name)) shell.out(say.originElsewhere(name, valueAt(accepted, name, row)));
}

/** As accepted.csv has it; '' for unknown. */
function valueAt(table: Table, name: string, row: number): string {
  const column = table.columns.get(name);
  if (!column) return '';
  if (column.kind === 'text') return textAt(column, row);
  const value = column.values[row];
  if (Number.isNaN(value)) return '';
  if (column.kind === 'date') return writeIsoDate(value);
  const bound = column.bounds?.[row] ?? 0;
  return `${bound > 0 ? '>' : bound < 0 ? '<' : ''}${twelveDigits(value)}`;
}
