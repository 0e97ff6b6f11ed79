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
  const lines: ProposalLine[] = [...nearMisses(columns, units), ...namings];
  const counted = (of: (line: ProposalLine) => number): Column => numberColumn('1', Float64Array.from(lines, of));
  const values: Readonly<Record<string, Column>> = {
    kind: textColumn(lines.map(({ kind }) => kind)),
    unit: textColumn(lines.map(({ unit }) => unit)),
    readings: counted(({ readings }) => readings),
    would_be: textColumn(lines.map(({ wouldBe }) => wouldBe)),
    evidence: textColumn(lines.map(({ evidence }) => evidence)),
    accepted: textColumn(lines.map(({ accepted }) => (accepted ? 'yes' : 'no'))),
    source_file: textColumn(lines.map(({ firstRow }) => columns.files[columns.fileOf(firstRow)])),
    source_line: counted(({ firstRow }) => columns.lines[firstRow]),
  };
  return makeTable(proposalsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

type ProposalLine = Omit<Naming, 'kind' | 'eachRow'> & { readonly kind: string; readonly accepted: boolean };

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
      firstRow: Math.max(row, 0),
    };
  });
}
