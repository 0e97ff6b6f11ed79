import type { CellContext, SourceFile } from '../cell.ts';
import * as say from '../messages/import.ts';
import { ask, fail, type Outcome, succeed } from '../outcome.ts';
import { writeDay, writeIsoDate } from '../quantities/dates.ts';
import type { Table } from '../table/table.ts';
import { accountTables, type FileAccount } from './account.ts';
import { answerProfile } from './answer-profile.ts';
import { askColumn, columnOptions } from './ask-column.ts';
import { buildTable } from './build-table.ts';
import type { MaybeCo } from './co-watch.ts';
import type { DateOrder } from './date-order.ts';
import { READING_FIELDS } from './fields.ts';
import type { FileRead, SetAside } from './file-read.ts';
import { findCo2Origin } from './find-co2-origin.ts';
import { checkFuels } from './fuel-names.ts';
import { highCoOf } from './high-co.ts';
import type { FilePlan } from './mapping.ts';
import { matchUnits } from './match-units.ts';
import { type NamingsTold, nameRows, tellNamings } from './name-rows.ts';
import { otherHeads } from './other-heads.ts';
import { type OtherMarks, otherMarks } from './other-marks.ts';
import { planFile } from './plan-file.ts';
import type { Profile } from './profile.ts';
import { proposalsTable } from './proposals-table.ts';
import { readFile } from './read-file.ts';
import { ReadingColumns, ROW } from './reading-columns.ts';
import { type HighCoInLogs, reduceLogs } from './reduce-logs.ts';
import { rivalsOf } from './rivals-of.ts';
import { type RevisedAnswer, settleCopies } from './settle-copies.ts';
import { readByAnswer, settleDates } from './settle-dates.ts';
import { type OverRange, settleOverRange } from './settle-over-range.ts';
import { sortRows } from './sort-rows.ts';
import { type ToldEvent, toldEvents, toldEventsTable } from './told-events.ts';
import { type UnknownWord, unknownWords } from './unknown-words.ts';
import { strangeWords, type UnreadColumns, unreadColumns } from './unread-columns.ts';

import { READINGS_VOCABULARY } from './vocabulary.ts';

export interface ImportOptions {
  readonly dateOrder: DateOrder;
  readonly singleReading: '' | 'as_found' | 'as_left';
  /** What becomes of a reading that stands in two files with other values; '' asks. */
  readonly revised: RevisedAnswer;
  readonly profiles: readonly Profile[];
  /** Ids of the register; undefined where the notebook has none. */
  readonly registered: readonly string[] | undefined;
  /** Proposals that the user accepts: a kind ('fires') or one of a unit ('fires:B-07'); also 'units:B7X' for a near miss. */
  readonly accept: readonly string[];
  /** Units whose fuel the register names, and those that it calls single-stage. */
  readonly fuelled: ReadonlySet<string>;
  readonly singleStage: ReadonlySet<string>;
  /** Fuels that the notebook knows beside the usual ones. */
  readonly fuels: readonly string[];
}

/** What came in, and what became of every line. */
export interface Imported {
  readonly accepted: Table;
  readonly setAside: Table;
  readonly duplicates: Table;
  readonly account: Table;
  /** What evidence says where the files do not, a row a unit and kind. */
  readonly proposals: Table;
  /** Events that notes tell of. */
  readonly toldEvents: Table;
  readonly files: readonly FileAccount[];
  readonly plans: readonly FilePlan[];
  /** What people should know, as data for remarks. */
  readonly found: ImportFindings;
}

/** What became of second-by-second logs. */
export interface Logs {
  readonly readings: number;
  readonly lines: number;
  readonly highCo: readonly (HighCoInLogs & { readonly file: string })[];
}

export interface ImportFindings {
  readonly highCo: readonly { file: string; line: number; found: string; reason: string }[];
  /** Columns that nobody understood and whose values would be dangerous if they were CO. */
  readonly maybeCo: readonly (MaybeCo & { readonly file: string })[];
  readonly revised: readonly { file: string; line: number; ofFile: string; ofLine: number }[];
  readonly matched: readonly { found: string; registered: string }[];
  readonly strangers: readonly { found: string; nearest: string; readings: number }[];
  /** Ids that differ in spelling only, and that no register settles. */
  readonly alike: readonly (readonly string[])[];
  /** Near misses that the user accepted as the registered unit. */
  readonly merged: readonly { found: string; registered: string }[];
  readonly overRange: readonly OverRange[];
  readonly coDashes: readonly { file: string; line: number }[];
  readonly unknownStates: number;
  readonly namedStates: number;
  /** Readings whose CO2 was found out to be measured or calculated. */
  readonly co2Named: number;
  readonly namings: readonly NamingsTold[];
  /** Events that notes tell of; proposals. */
  readonly toldEvents: readonly ToldEvent[];
  /** Columns left out because another one is the same thing. */
  readonly rivals: readonly { readonly file: string; readonly head: string; readonly of: string }[];
  /** Columns left out because nobody knows what their heads mean. */
  readonly unreadColumns: readonly UnreadColumns[];
  readonly otherMarks: readonly OtherMarks[];
  readonly unknownWords: readonly UnknownWord[];
  readonly strangeWords: ReturnType<typeof strangeWords>;
  /** Other head lines further down in a file, each with what its columns were taken for; '' for none of readings. */
  readonly otherHeads: readonly {
    readonly file: string;
    readonly line: number;
    readonly times: number;
    readonly columns: string;
  }[];
  readonly logs: Logs;
  /** Files whose dates are read in the order that the user named. */
  readonly datesByAnswer: readonly string[];
  readonly unread: readonly { head: string; count: number; example: string }[];
}

/** Reads files of readings into one table. Questions and errors of the first file that has any come back as such. */
export async function importReadings(
  files: readonly SourceFile[],
  options: ImportOptions,
  context: CellContext,
): Promise<Outcome<Imported>> {
  const plans: FilePlan[] = [];
  for (const file of files) {
    const plan = await planFile(file, READINGS_VOCABULARY, { profiles: options.profiles, needs: NEEDS });
    if (plan.status !== 'value') return plan;
    const fault = unusable(plan.value, options.profiles);
    if (fault) return fault;
    plans.push(plan.value);
  }
  const columns = new ReadingColumns(READING_FIELDS);
  const reads: FileRead[] = [];
  for (let i = 0; i < files.length; i++) {
    columns.startFile(files[i].name);
    const read = await readFile(files[i], plans[i], READINGS_VOCABULARY, columns, context, options.profiles);
    if (!read.whole) return fail(say.changedWhileRead(files[i].name));
    const open = read.plan.sections?.find(({ plan }) => (plan?.questions.length ?? 0) > 0);
    if (open?.plan) return ask(open.plan.questions[0]);
    reads.push(read);
  }
  const open = reads.flatMap((read, i) => settleDates(columns, i, read, options.dateOrder, context.asOf) ?? []);
  const others = reads.filter((read) => readByAnswer(read, context.asOf)).map(({ plan }) => plan.file);
  if (open.length > 0) return ask({ ...open[0], message: say.alsoIn(open[0].message, others.slice(1)) });
  return await settle(files, columns, reads, options, context);
}

const onlyFor = (file: string): { name: string; file: string } => ({ name: say.unitOnlyOf(file), file });

const NEEDS = 'the unit, the date and at least one measured value';

function unusable(plan: FilePlan, profiles: readonly Profile[]): Outcome<never> | undefined {
  const known = new Set([...plan.columns, ...plan.constants].map(({ field }) => field));
  const heads = plan.columns
    .filter(({ field }) => field !== '')
    .map(({ head }) => `"${head.trim()}"`)
    .join(', ');
  if (!known.has('taken_at')) return askColumn(plan, READINGS_VOCABULARY, 'taken_at', 'date', profiles);
  const measured = READING_FIELDS.some(({ name, measured }) => measured && known.has(name)) || known.has('co');
  if (!measured) return fail(say.noColumn(plan.file, 'measured values', heads));
  const used = plan.profile === '' ? undefined : profiles.find(({ name }) => name === plan.profile);
  if (!known.has('unit'))
    return ask({
      message: say.askUnitId(plan.file),
      remedy: say.nameUnitAtCell(),
      byCommand: say.profileByCommand(JSON.stringify({ file: plan.file, constants: { unit: 'B-07' } })),
      parameter: 'profiles',
      options: columnOptions(plan, READINGS_VOCABULARY, 'unit', profiles),
      entry: {
        label: say.unitIdOf(plan.file),
        // Exports of one shape may be of one unit each.
        answer: { ...answerProfile('readings', plan.file, used, plan.columns, {}), ...onlyFor(plan.file) },
        path: ['constants', 'unit'],
      },
    });
  return plan.questions.length > 0 ? ask(plan.questions[0]) : undefined;
}

async function settle(
  files: readonly SourceFile[],
  columns: ReadingColumns,
  reads: readonly FileRead[],
  options: ImportOptions,
  context: CellContext,
): Promise<Outcome<Imported>> {
  const logs = settleLogs(columns);
  const overRange = settleOverRange(columns);
  const setAside = [...reads.flatMap((read) => read.setAside), ...refuseDates(columns, context.asOf, reads)];
  const fuels = checkFuels(columns, options.fuels);
  if (fuels !== '') return fail(fuels);
  const units = matchUnits(columns, options.registered, options.accept);
  await context.pause();
  let order = sortRows(columns);
  const copies = settleCopies(
    columns,
    reads.map(({ plan }) => plan),
    order,
    options.revised,
  );
  if (copies.status !== 'value') return copies;
  setAside.push(...copies.value.setAside);
  const co2Named = findCo2Origin(columns);
  if (copies.value.taken > 0) order = sortRows(columns);
  const named = nameRows(columns, order, options);
  const proposals = proposalsTable(columns, named.proposals, units);
  const { duplicates, revised } = copies.value;
  const accounted = await accountTables(files, columns, reads, setAside, duplicates);
  if (accounted.status !== 'value') return accounted;
  const { account, tables } = accounted.value;
  const empty = account.find(({ rows_read }) => rows_read === 0);
  if (empty) return fail(say.noReadingsIn(empty.file));
  await context.pause();
  const highCo = setAside
    .filter((row) => row.highCo !== '')
    .map((row) => ({ ...row, file: columns.files[row.file], found: row.highCo }));
  if (named.changed > 0) order = sortRows(columns);
  const table = buildTable(columns, order);
  const told = toldEvents(table);
  return succeed({
    accepted: table,
    ...tables,
    proposals,
    toldEvents: toldEventsTable(table, told),
    files: account,
    plans: reads.map(({ plan }) => plan),
    found: {
      highCo,
      maybeCo: reads.flatMap(({ maybeCo, plan: { file } }) => maybeCo.map((maybe) => ({ ...maybe, file }))),
      revised,
      ...units,
      overRange,
      coDashes: reads.flatMap(({ coDashes, plan }) => coDashes.map((line) => ({ file: plan.file, line }))),
      unknownStates: countUnknownStates(table),
      namedStates: named.states,
      co2Named,
      toldEvents: told,
      namings: tellNamings(named.proposals),
      logs,
      datesByAnswer: reads.filter((read) => readByAnswer(read, context.asOf)).map(({ plan: { file } }) => file),
      otherHeads: reads.flatMap(({ plan }) => otherHeads(plan)),
      rivals: reads.flatMap(({ plan }) => rivalsOf(plan)),
      unreadColumns: reads.flatMap(({ plan }) => unreadColumns(plan)),
      otherMarks: otherMarks(reads),
      unknownWords: unknownWords(reads),
      strangeWords: reads.flatMap(({ plan }) => strangeWords(plan)),
      unread: reads.flatMap(({ reader }) => [...reader.unread].map(([head, seen]) => ({ head, ...seen }))),
    },
  });
}

function settleLogs(columns: ReadingColumns): Logs {
  const sum = { readings: 0, lines: 0 };
  const highCo: (HighCoInLogs & { file: string })[] = [];
  for (let file = 0; file < columns.files.length; file++) {
    const { readings, lines, highCo: high } = reduceLogs(columns, file);
    if (high) highCo.push({ ...high, file: columns.files[file] });
    sum.readings += readings;
    sum.lines += lines;
  }
  return { ...sum, highCo };
}

/** Sets aside what lies after the as-of day, or has no date in the order of its file. */
function refuseDates(columns: ReadingColumns, asOf: number, reads: readonly FileRead[]): SetAside[] {
  const taken = columns.numbers.get('taken_at')!;
  const refused: SetAside[] = [];
  for (let row = 0; row < columns.rows; row++) {
    const day = taken.get(row);
    if (day < asOf + 1 || columns.status[row] !== ROW.accepted) continue;
    columns.status[row] = ROW.setAside;
    const file = columns.fileOf(row);
    const reason = Number.isNaN(day)
      ? say.otherDateOrder(headOf(reads[file].plan, 'taken_at'))
      : say.afterAsOf(writeIsoDate(day), writeDay(asOf));
    refused.push({ file, line: columns.lines[row], reason, highCo: highCoOf(columns, row) });
  }
  return refused;
}

const headOf = ({ columns }: FilePlan, name: string): string =>
  columns.find(({ field }) => field === name)?.head.trim() ?? name;

function countUnknownStates(table: Table): number {
  const state = table.columns.get('state');
  if (state?.kind !== 'text') return 0;
  const unknown = state.levels.indexOf('unknown');
  return unknown < 0 ? 0 : state.codes.reduce((sum, code) => sum + (code === unknown ? 1 : 0), 0);
}
