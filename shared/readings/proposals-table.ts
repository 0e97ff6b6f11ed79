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
  const first = (rows: readonly number[]): number => rows.reduce((least, row) => Math.min(least, row), rows[0]);
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
    source_file: textColumn(namings.map(({ rows }) => columns.files[columns.fileOf(first(rows))])),
    source_line: numberColumn(
      '1',
      Float64Array.from(namings, ({ rows }) => columns.lines[first(rows)]),
    ),
  };
  return makeTable(proposalsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

/** 'high 12, low 12'. */
function tally(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([word, count]) => `${word.replaceAll('_', ' ')} ${count}`)
    .join(', ');
}
