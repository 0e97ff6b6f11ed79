import type { Dialect } from '../csv/dialect.ts';
import { fixedColumns } from '../csv/fixed-columns.ts';
import { RecordReader } from '../csv/record-reader.ts';
import { findUnit } from '../quantities/find-unit.ts';
import { HEAD_QUALIFIERS } from './head-words.ts';
import { orderInHead } from './order-in-head.ts';
import { plainWords } from './plain-words.ts';
import { type Profile, profileFits } from './profile.ts';
import { type HeadMeaning, understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Where the table stands in a file, and what its heads mean. */
export interface TableFound {
  readonly dialect: Dialect;
  /** Records before the first row: preamble and head lines. */
  readonly headRecords: number;
  readonly heads: readonly string[];
  /** Meaning of each head, undefined where it is not understood. */
  readonly meanings: readonly (HeadMeaning | undefined)[];
  /** The line of units below the heads; empty where there is none. */
  readonly units: readonly string[];
  /** Preamble, a record a line. */
  readonly preamble: readonly (readonly string[])[];
  /** Rows of the sample. */
  readonly rows: readonly (readonly string[])[];
  /** Different fields understood. */
  readonly score: number;
}

/** Head lines further down than this are those of another table. */
const DEEPEST = 60;
const DELIMITERS = [',', ';', '\t', '|'] as const;

/**
 * Finds the table in the beginning of a file: the delimiter and the head line that make the most heads understood.
 * `whole` says that the sample is the whole file, whose last line is then complete.
 */
export function findTable(
  sample: string,
  whole: boolean,
  vocabulary: Vocabulary,
  profiles: readonly Profile[] = [],
): TableFound | undefined {
  const newline = sample.includes('\n') || !sample.includes('\r') ? '\n' : '\r';
  let best: TableFound | undefined;
  const consider = (dialect: Dialect): void => {
    const found = inDialect(sample, whole, dialect, vocabulary, profiles);
    if (found && found.score > (best?.score ?? 0)) best = found;
  };
  for (const delimiter of DELIMITERS) if (sample.includes(delimiter)) consider({ delimiter, newline, starts: [] });
  if (!best) consider({ delimiter: ',', newline, starts: [] });
  if ((best?.score ?? 0) < 3) {
    const starts = fixedColumns(sample, newline);
    if (starts.length > 1) consider({ delimiter: 'columns', newline, starts });
  }
  return best;
}

function inDialect(
  sample: string,
  whole: boolean,
  dialect: Dialect,
  vocabulary: Vocabulary,
  profiles: readonly Profile[],
): TableFound | undefined {
  const { rows } = new RecordReader(dialect).push(sample, whole);
  let best: TableFound | undefined;
  for (let i = 0; i < Math.min(rows.length, DEEPEST); i++) {
    // A table of one column is one only from its first line on: any single word may stand above a table.
    if (rows[i].every((cell) => cell.trim() === '') || (rows[i].length < 2 && i > 0)) continue;
    const found = tableAt(rows, i, dialect, vocabulary);
    // A profile that fits knows more heads than any list of words.
    const profile = profiles.find((candidate) => profileFits(candidate, found.heads));
    const score = found.score + (profile ? 2 * Object.keys(profile.columns).length : 0);
    if (score <= (best?.score ?? 0)) continue;
    // A fuller head line below a table is that of another table; what stands above it is no preamble.
    if (best && isTable(best, i, vocabulary)) break;
    best = { ...found, score };
  }
  return best;
}

/** Heads that make a table of their own: three of them understood, and numbers under one of them before the given line. */
function isTable({ score, meanings, rows, headRecords }: TableFound, before: number, vocabulary: Vocabulary): boolean {
  const counted = meanings.flatMap((meaning, i) => (meaning && isCounted(meaning.field, vocabulary) ? i : []));
  const between = rows.slice(0, Math.max(0, before - headRecords));
  return score >= 3 && counted.some((i) => between.some((row) => /^\s*[<>]?-?\d/.test(row[i] ?? '')));
}

/** The table whose head line is the record at a place, whatever stands there. */
export function tableAt(
  rows: readonly (readonly string[])[],
  at: number,
  dialect: Dialect,
  vocabulary: Vocabulary,
): TableFound {
  const head = headAt(rows, at, vocabulary);
  const score = new Set(head.meanings.flatMap((m) => (m ? [`${m.field} ${m.fire} ${m.state}`] : []))).size;
  return { dialect, ...head, preamble: rows.slice(0, at), rows: rows.slice(head.headRecords), score };
}

type Head = Pick<TableFound, 'headRecords' | 'heads' | 'meanings' | 'units'>;

/** A head line with, where there are any, a line of units below it and a line of fires or states above it. */
function headAt(rows: readonly (readonly string[])[], at: number, vocabulary: Vocabulary): Head {
  const heads = joinedHeads(rows[at], rows[at - 1] ?? [], vocabulary);
  const below = rows[at + 1] ?? [];
  const units = isUnitLine(below, heads) ? below : [];
  const groups = groupsAbove(rows[at - 1] ?? [], heads.length);
  const saysLeft = heads.some((head) => /(?:^|\s)(?:al|as left)$/.test(plainWords(withoutBrackets(head))));
  const meanings = heads.map((head, i) => {
    const meaning = understandHead(saysLeft ? inFull(head) : head, vocabulary, units[i] ?? '');
    if (!meaning || !groups) return meaning;
    const { fire, state } = groups[i];
    const counted = isCounted(meaning.field, vocabulary);
    return counted ? { ...meaning, fire: meaning.fire || fire, state: meaning.state || state } : meaning;
  });
  return { headRecords: at + 1 + (units.length > 0 ? 1 : 0), heads, meanings, units };
}

/** Over groups of columns, heads that need no second line stand in the first: an empty one is what stands above it. */
function joinedHeads(heads: readonly string[], above: readonly string[], vocabulary: Vocabulary): readonly string[] {
  return Array.from({ length: Math.max(heads.length, above.length) }, (_, i) => {
    const own = heads[i] ?? '';
    const higher = above[i] ?? '';
    return own.trim() === '' && understandHead(higher, vocabulary) !== undefined ? higher : own;
  });
}

const withoutBrackets = (head: string): string => head.replace(/[[(].*?[\])]/g, ' ');

/** AF is air-free or as found, AL only as left: where heads end with AL, AF beside them is as found. */
function inFull(head: string): string {
  return head.replace(/\bAF\b/i, 'as found').replace(/\bAL\b/i, 'as left');
}

/** Heads of numbers, among them those that need a second look before they are a field. */
function isCounted(field: string, { fields }: Vocabulary): boolean {
  return fields.get(field)?.kind === 'number' || ['co', 'co_raw', 'lambda'].includes(field);
}

/** A second head line holds units and nothing else, at least two of them. */
function isUnitLine(cells: readonly string[], heads: readonly string[]): boolean {
  if (cells.length < 2 || cells.length > heads.length + 1) return false;
  const written = cells
    .map((cell) => cell.trim().replace(/^[[(]|[\])]$/g, ''))
    .filter((cell) => cell !== '' && cell !== '-');
  const units = written.filter(
    (cell) => findUnit(cell) !== undefined || /^(?:text|date|id|d\.m\.y)$/i.test(cell) || orderInHead(cell) !== '',
  );
  return units.length >= 2 && units.length >= 0.8 * written.length && !written.some((cell) => /^\d/.test(cell));
}

/** A line above the heads that names fires or states, each holding until the next one. */
function groupsAbove(
  cells: readonly string[],
  columns: number,
): readonly { fire: string; state: string }[] | undefined {
  // Alone above the first column it is the table's title.
  if (cells.filter((cell) => cell.trim() !== '').length === 1 && (cells[0] ?? '').trim() !== '') return undefined;
  let any = false;
  let current = { fire: '', state: '' };
  const groups = Array.from({ length: columns }, (_, i) => {
    const words = plainWords(cells[i] ?? '');
    if (words !== '') {
      current = qualifiersIn(words);
      any ||= current.fire !== '' || current.state !== '';
    }
    return current;
  });
  return any ? groups : undefined;
}

function qualifiersIn(words: string): { fire: string; state: string } {
  let rest = ` ${words} `;
  const found = { fire: '', state: '' };
  for (const { words: qualifier, kind, value } of HEAD_QUALIFIERS) {
    if (found[kind] !== '' || !rest.includes(` ${qualifier} `)) continue;
    found[kind] = value;
    rest = rest.replace(` ${qualifier} `, ' ');
  }
  return rest.trim() === '' ? found : { fire: '', state: '' };
}
