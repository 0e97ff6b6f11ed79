import type { ColumnMapping, Constant } from './mapping.ts';
import { plainWords } from './plain-words.ts';
import { readTitle } from './title-words.ts';
import { understandHead } from './understand-head.ts';
import type { Vocabulary } from './vocabulary.ts';

/**
 * What a preamble can say for all readings below it. A date there is the day of the export and no reading's, unless the
 * rows have none of their own.
 */
const TOLD_ONCE = new Set(['unit', 'analyzer', 'calibrated_on', 'technician', 'fuel', 'visit', 'visit_reason']);
/** Heads that mean something else above a table than in it. */
const AMBIGUOUS = new Set(['test', 'record', 'data', 'device', 'meter', 'tag']);

/** How the reason of such a constant ends. */
export const ABOVE = 'above the table';

type Columns = readonly Pick<ColumnMapping, 'field' | 'fire' | 'state'>[];

/**
 * Name-value lines above a table ("Analyzer: 4711", "Kessel;B-07") that hold for all its rows, and where no column says it
 * titles such as "As-found readings" and the date.
 */
export function preambleConstants(
  preamble: readonly (readonly string[])[],
  vocabulary: Vocabulary,
  columns: Columns,
): Constant[] {
  const constants: Constant[] = [];
  const isOpen = (field: string): boolean =>
    vocabulary.fields.has(field) && !columns.some((column) => column.field === field);
  const isDated = !isOpen('taken_at');
  for (const record of preamble) {
    const cells = record.map((cell) => cell.trim()).filter((cell) => cell !== '');
    if (cells.length === 1) constants.push(...titleConstants(cells[0], columns, isOpen, constants));
    const [name, value] = cells.length === 1 ? splitOnce(cells[0]) : [cells[0]?.replace(/\s*[:=]$/, ''), cells[1]];
    if (name === undefined || value === undefined || cells.length > 2) continue;
    const field = understandHead(name, vocabulary)?.field ?? '';
    if (field === 'taken_at' ? isDated || !/\d/.test(value) : !TOLD_ONCE.has(field)) continue;
    if (AMBIGUOUS.has(plainWords(name)) || constants.some((known) => known.field === field)) continue;
    constants.push({ field, value, reason: `"${name}" ${ABOVE}` });
  }
  return constants;
}

function titleConstants(
  title: string,
  columns: Columns,
  isOpen: (field: string) => boolean,
  known: readonly Constant[],
): Constant[] {
  const { unit, fire, state, date, isBare } = readTitle(title);
  const named = { unit, fire, state, taken_at: isBare ? '' : date };
  return (['unit', 'fire', 'state', 'taken_at'] as const)
    .filter((field) => named[field] !== '' && isOpen(field))
    .filter((field) => (field !== 'fire' && field !== 'state') || columns.every((column) => column[field] === ''))
    .filter((field) => known.every((one) => one.field !== field))
    .map((field) => ({ field, value: named[field], reason: `"${title}" ${ABOVE}` }));
}

function splitOnce(line: string): [string, string] | [undefined, undefined] {
  const match = /^([^:=]{1,40}?)\s*[:=]\s*(.+)$/.exec(line);
  return match ? [match[1], match[2].trim()] : [undefined, undefined];
}
