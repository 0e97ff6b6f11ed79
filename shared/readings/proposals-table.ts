import { proposalsSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import type { Naming } from './naming.ts';
import type { ReadingColumns } from './reading-columns.ts';

/** What evidence says where the files do not: a row a kind and unit, with what it would name and whether that is accepted. */
export function proposalsTable(
  columns: ReadingColumns,
  namings: readonly (Naming & { readonly accepted: boolean })[],
): Table {
  const first = namings.map(({ rows }) => smallest(rows));
  const values: Readonly<Record<string, Column>> = {
    kind: textColumn(namings.map(({ kind }) => kind)),
    unit: textColumn(namings.map(({ unit }) => unit)),
    readings: numberColumn(
      '1',
      Float64Array.from(namings, ({ rows }) => rows.length),
    ),
    would_be: textColumn(namings.map(({ words }) => tally(words))),
    evidence: textColumn(namings.map(({ evidence }) => evidence)),
    accepted: textColumn(namings.map(({ accepted }) => (accepted ? 'yes' : 'no'))),
    source_file: textColumn(first.map((row) => columns.files[columns.fileOf(row)])),
    source_line: numberColumn(
      '1',
      Float64Array.from(first, (row) => columns.lines[row]),
    ),
  };
  return makeTable(proposalsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

function smallest(rows: readonly number[]): number {
  let [least] = rows;
  for (const row of rows) if (row < least) least = row;
  return least;
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
