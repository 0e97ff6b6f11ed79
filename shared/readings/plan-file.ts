import type { SourceFile } from '../cell.ts';
import { binaryKind } from '../csv/binary-kind.ts';
import type { BlockDialect } from '../csv/block-reader.ts';
import { detectEncoding, type EncodingFound } from '../csv/encoding.ts';
import { readHead } from '../csv/read-head.ts';
import { readText } from '../csv/read-text.ts';
import * as say from '../messages/import.ts';
import { nearestName } from '../names/nearest-name.ts';
import { fail, type NamedAnswer, type Outcome, succeed } from '../outcome.ts';
import { answerProfile, type ProfileAnswer } from './answer-profile.ts';
import { columnQuestion } from './column-question.ts';
import { type BlocksFound, findBlocks } from './find-blocks.ts';
import { findTable, type TableFound } from './find-table.ts';
import { lettersOf } from './letters-of.ts';
import type { ColumnMapping, Constant, FilePlan } from './mapping.ts';
import { orderInHead } from './order-in-head.ts';
import { plainWords } from './plain-words.ts';
import { planColumns } from './plan-columns.ts';
import { preambleConstants } from './preamble.ts';
import { type Profile, profileFits, profilesFor } from './profile.ts';
import { settleDecimal } from './settle-decimal.ts';
import type { Vocabulary } from './vocabulary.ts';

/** The beginning of a file by which all of it is planned. */
const SAMPLE_BYTES = 1 << 18;
const MOST_COLUMNS = 2000;
/** Letters of a line that is known again by them. */
const LEAST_LETTERS = 6;
/** Of a first value that is shown. */
const LONGEST_VALUE = 60;
/** The date that a row of each kind of table has. */
const DATES = new Set(['taken_at', 'on', 'from']);
/** A table that makes this many heads understood is one. */
const MOST_IN_BLOCKS = 6;
const LARGEST_OF_BLOCKS = 64 << 20;

/** What the user has said about how files are to be read. */
export interface PlanOptions {
  readonly profiles: readonly Profile[];
  /** What a reading needs, for messages: 'a unit, a date and a measurement'. */
  readonly needs: string;
}

/**
 * How a file is to be read, from its first 256 kB. An error where it is no table of this kind; what the file does not
 * settle stands in the plan's questions.
 */
export async function planFile(
  file: SourceFile,
  vocabulary: Vocabulary,
  options: PlanOptions,
): Promise<Outcome<FilePlan>> {
  const strange = strangeField(options.profiles, vocabulary);
  if (strange !== '') return fail(strange);
  const { head, whole } = await readHead(file.open(), SAMPLE_BYTES);
  if (head.length === 0) return fail(say.emptyFile(file.name));
  const binary = binaryKind(head);
  const found = binary === undefined ? detectEncoding(head) : undefined;
  if (!found) return fail(say.notText(file.name, binary ?? 'bytes that are no text'));
  const sample = new TextDecoder(found.encoding).decode(head, { stream: !whole });
  if (sample.trim() === '') return fail(say.emptyFile(file.name));
  const firstLine = sample.split(/\r\n|\n|\r/, 1)[0];
  if (firstLine.length >= sample.length && !whole) return fail(say.endlessLine(file.name, sample.length));
  const columns = Math.max(...[',', ';', '\t', '|'].map((mark) => firstLine.split(mark).length));
  if (columns > MOST_COLUMNS) return fail(say.tooManyColumns(file.name, columns, MOST_COLUMNS));
  if (isValueALine(firstLine)) return fail(say.valueALine(file.name, firstLine));
  const profiles = profilesFor(file.name, options.profiles);
  const table = findTable(sample, whole, vocabulary, profiles);
  // Name-value lines also look like a table of two columns, of which at most a line or two make sense.
  const blocks =
    (table?.score ?? 0) < MOST_IN_BLOCKS ? await blocksOf(file, found, sample, whole, vocabulary) : undefined;
  const best = blocks && blocks.table.score > (table?.score ?? 0) ? blocks.table : table;
  if (!best) return fail(say.noUsableColumn(file.name, firstLine, options.needs));
  if (best !== table && isTransposed(best)) return fail(say.transposed(file.name, best.heads[1] ?? best.heads[0]));
  const dialect = best === table ? undefined : blocks?.dialect;
  return succeed(planTable(file.name, best, dialect, found, vocabulary, profiles));
}

const PARAMETER =
  /\b(?:parameter|measurand|variable|measurement name|messgrosse|parametre|grandeur|parametro|grandezza)\b/;
const VALUE = /\b(?:value|wert|messwert|valeur|valor|valore|waarde)\b/;

/** One line a value, with what it is in a column of its own. */
const isValueALine = (firstLine: string): boolean => {
  const words = plainWords(firstLine);
  return PARAMETER.test(words) && VALUE.test(words) && !/\bo2\b|\bco2\b/.test(words);
};

/** Names stand in the first column and each further column is a test: one block whose values are several each. */
function isTransposed({ rows, heads, dialect }: TableFound): boolean {
  const [only] = rows;
  if (rows.length !== 1 || !only) return false;
  const several = only.filter((value) =>
    /\d\S*[\s,;|\t]+\S*\d/.test(value.replace(/\d[:h]\d\d(?::\d\d)?\s*(?:[ap]\.?m\.?)?/gi, '')),
  ).length;
  return dialect.starts.length === 0 && several >= heads.length / 2;
}

/** Blocks may hold further names anywhere, so all of a file of printouts is looked at, if it is of a size for them. */
async function blocksOf(
  file: SourceFile,
  { encoding }: EncodingFound,
  sample: string,
  whole: boolean,
  vocabulary: Vocabulary,
): Promise<BlocksFound | undefined> {
  const found = findBlocks(sample, vocabulary);
  if (!found || whole || file.size > LARGEST_OF_BLOCKS) return found;
  let text = '';
  for await (const piece of readText(file.open(), encoding)) text += piece.text;
  return findBlocks(text, vocabulary) ?? found;
}

/** One sentence about the first profile column that is to be something which no column can be; '' where there is none. */
function strangeField(profiles: readonly Profile[], { fields, own }: Vocabulary): string {
  for (const { name, columns } of profiles)
    for (const [head, { field }] of Object.entries(columns))
      if (field !== '' && field !== 'co' && !fields.has(field) && !own.has(field.toLowerCase()))
        return say.profileField(name, head, field, nearestName(field, fields.keys()));
  return '';
}

/** How the table that was found is to be read; `file` names it in questions and their answers. */
export function planTable(
  file: string,
  table: TableFound,
  blocks: BlockDialect | undefined,
  { encoding, reason }: Pick<EncodingFound, 'encoding' | 'reason'>,
  vocabulary: Vocabulary,
  profiles: readonly Profile[],
): FilePlan {
  const profile = profiles.find((candidate) => profileFits(candidate, table.heads));
  const { columns, open } = planColumns(table, vocabulary, profile);
  const settled = columns.filter((one) => !open.some(({ column, others }) => [column, ...others].includes(one)));
  const answered = (answer: ProfileAnswer): NamedAnswer => ({
    ...answerProfile(vocabulary.table, file, profile, settled, answer),
  });
  const questions = open.map((part) => columnQuestion(file, part, table, vocabulary, answered));
  const decimal = settleDecimal(file, table, columns, vocabulary, profile, answered);
  if (decimal.question) questions.push(decimal.question);
  return {
    file,
    encoding,
    encodingReason: reason,
    dialect: table.dialect,
    headRecords: table.headRecords,
    titles: titlesOf(table),
    heads: table.heads,
    firstValues: table.heads.map((_, index) => firstValue(table, index)),
    rowFields: usualLength(table),
    rowsMayEnd: rowsMayEnd(table),
    decimal: decimal.mark,
    dateOrder: profile?.dateOrder ?? '',
    dateOrderTold: orderTold(table, columns),
    columns,
    constants: constantsOf(table, columns, vocabulary, profile),
    blocks,
    profile: profile?.name ?? '',
    words: profile?.words ?? { fire: {}, state: {} },
    questions,
  };
}

function firstValue({ rows }: TableFound, index: number): string {
  for (const row of rows) if ((row[index] ?? '').trim() !== '') return row[index].trim().slice(0, LONGEST_VALUE);
  return '';
}

/** By the form of a date in the head of the reading's date, or below it. */
function orderTold({ heads, units }: TableFound, columns: readonly ColumnMapping[]): FilePlan['dateOrder'] {
  const dates = columns.filter(({ field }) => DATES.has(field));
  return (
    dates.map(({ index }) => orderInHead(heads[index] ?? '', units[index] ?? '')).find((order) => order !== '') ?? ''
  );
}

/** Lines between the heads and the first row, such as "Boiler: B-01", which hold until the next one of them. */
function ledBy({ rows }: TableFound, vocabulary: Vocabulary, columns: readonly ColumnMapping[]): TableFound['rows'] {
  const first = rows.findIndex((row) => row.some((cell) => cell.trim() !== '') && !isLed(row, vocabulary, columns));
  return rows.slice(0, Math.max(0, first));
}

const isLed = (row: readonly string[], vocabulary: Vocabulary, columns: readonly ColumnMapping[]): boolean =>
  preambleConstants([row], vocabulary, columns).length > 0;

/** Lines with words; a line of numbers is no title. */
const titlesOf = ({ preamble }: TableFound): readonly string[] =>
  preamble
    .filter((record) => record.filter((cell) => /^[<>]?-?\d[\d.,]*$/.test(cell.trim())).length < 2)
    .map(lettersOf)
    .filter((letters) => letters.length >= LEAST_LETTERS);

/** The most frequent number of fields, blank lines and lines of one field left out. */
function usualLength({ rows, heads }: TableFound): number {
  const counts = new Map<number, number>();
  for (const { length } of rows) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].reduce((best, entry) => (entry[1] > best[1] ? entry : best), [heads.length, 0])[0];
}

/** Fewer short rows than this share are damage. */
const LEAST_SHORT_SHARE = 0.05;

/**
 * Whether a file leaves empty fields at the end of a row out: no row of full length ends with an empty field, and enough
 * rows are shorter. Else a short row has lost a delimiter or its end.
 */
function rowsMayEnd({ rows, heads }: TableFound): boolean {
  const needed = heads.findLastIndex((head) => head.trim() !== '') + 1;
  const filled = rows.filter((row) => row.length > needed / 2);
  const short = filled.filter((row) => row.length < needed).length;
  const emptyEnds = filled.some((row) => row.length >= needed && (row[needed - 1] ?? '').trim() === '');
  return !emptyEnds && short > 0 && short >= LEAST_SHORT_SHARE * filled.length;
}

function constantsOf(
  table: TableFound,
  columns: readonly ColumnMapping[],
  vocabulary: Vocabulary,
  profile: Profile | undefined,
): Constant[] {
  const inColumns = new Set(columns.map(({ field }) => field));
  // What every row says for itself is not told by a profile, which may be that of another file.
  const given = Object.entries(profile?.constants ?? {}).flatMap(([field, value]) =>
    inColumns.has(field) ? [] : [{ field, value, reason: `profile ${profile?.name ?? ''}`.trim() }],
  );
  const taken = new Set([...inColumns, ...given.map(({ field }) => field)]);
  return [
    ...given,
    ...preambleConstants([...table.preamble, ...ledBy(table, vocabulary, columns)], vocabulary, columns).filter(
      ({ field }) => !taken.has(field),
    ),
  ];
}
