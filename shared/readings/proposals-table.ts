import * as say from '../messages/import.ts';
import { proposalsSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import type { UnitsMatched } from './match-units.ts';
import type { Naming } from './naming.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

/** What evidence says where the files do not: a row a kind and unit, with what it would name and whether that is accepted. */
export function proposalsTable(
  columns: ReadingColumns,
  namings: readonly (Naming & { readonly accepted: boolean })[],
  units: UnitsMatched,
): Table {
  const tallied = new Map<readonly string[], string>();
  const lines: ProposalLine[] = [
    ...nearMisses(columns, units),
    ...namings.map(({ kind, unit, rows, words, evidence, accepted }) => ({
      kind,
      unit,
      readings: rows.length,
      wouldBe: tallyOf(words, tallied),
      evidence,
      accepted,
      row: smallest(rows),
    })),
  ];
  const counted = (of: (line: ProposalLine) => number): Column => numberColumn('1', Float64Array.from(lines, of));
  const values: Readonly<Record<string, Column>> = {
    kind: textColumn(lines.map(({ kind }) => kind)),
    unit: textColumn(lines.map(({ unit }) => unit)),
    readings: counted(({ readings }) => readings),
    would_be: textColumn(lines.map(({ wouldBe }) => wouldBe)),
    evidence: textColumn(lines.map(({ evidence }) => evidence)),
    accepted: textColumn(lines.map(({ accepted }) => (accepted ? 'yes' : 'no'))),
    source_file: textColumn(lines.map(({ row }) => columns.files[columns.fileOf(row)])),
    source_line: counted(({ row }) => columns.lines[row]),
  };
  return makeTable(proposalsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

function smallest(rows: ArrayLike<number>): number {
  let least = rows[0];
  for (let i = 1; i < rows.length; i++) if (rows[i] < least) least = rows[i];
  return least;
}

interface ProposalLine {
  readonly kind: string;
  readonly unit: string;
  readonly readings: number;
  readonly wouldBe: string;
  readonly evidence: string;
  readonly accepted: boolean;
  readonly row: number;
}

/** Ids that are a character away from a registered one, with the first row of each. */
function nearMisses(columns: ReadingColumns, { strangers, merged }: UnitsMatched): ProposalLine[] {
  const near = [
    ...strangers
      .filter(({ nearest }) => nearest !== '')
      .map(({ found, nearest }) => ({ found, to: nearest, accepted: false })),
    ...merged.map(({ found, registered }) => ({ found, to: registered, accepted: true })),
  ];
  if (near.length === 0) return [];
  const units = columns.texts.get('unit');
  return near.map(({ found, to, accepted }) => {
    const name = accepted ? to : found;
    let [row, readings] = [-1, 0];
    for (let i = 0; i < columns.rows; i++)
      if (columns.status[i] === ROW.accepted && units?.text(i) === name) {
        if (row < 0) row = i;
        readings++;
      }
    return {
      kind: 'units',
      unit: found,
      readings,
      wouldBe: to,
      evidence: say.oneCharacter(found, to),
      accepted,
      row: Math.max(row, 0),
    };
  });
}

/** Many units have the very same words. */
function tallyOf(words: readonly string[], tallied: Map<readonly string[], string>): string {
  const text = tallied.get(words) ?? tally(words);
  tallied.set(words, text);
  return text;
}

/** 'high 12, low 12'. */
function tally(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (let from = 0; from < words.length; ) {
    let to = from + 1;
    while (to < words.length && words[to] === words[from]) to++;
    counts.set(words[from], (counts.get(words[from]) ?? 0) + to - from);
    from = to;
  }
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([word, count]) => `${word.replaceAll('_', ' ')} ${count}`)
    .join(', ');
}
