import * as say from '../messages/import.ts';
import { proposalsSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import type { UnitsMatched } from './match-units.ts';
import type { SettledNaming } from './name-rows.ts';
import type { Naming } from './naming.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

/** What evidence says where the files do not: a row a kind and unit, with what it would name and whether that is accepted. */
export function proposalsTable(columns: ReadingColumns, namings: readonly SettledNaming[], units: UnitsMatched): Table {
  const near = nearMisses(columns, units);
  const lines: ProposalLine[] = [...near.map(({ line }) => line), ...namings.map(({ naming }) => naming)];
  const accepted = [...near, ...namings].map((one) => (one.accepted ? 'yes' : 'no'));
  const counted = (of: (line: ProposalLine) => number): Column => numberColumn('1', Float64Array.from(lines, of));
  const values: Readonly<Record<string, Column>> = {
    kind: textColumn(lines.map(({ kind }) => kind)),
    unit: textColumn(lines.map(({ unit }) => unit)),
    readings: counted(({ readings }) => readings),
    would_be: textColumn(lines.map(({ wouldBe }) => wouldBe)),
    evidence: textColumn(lines.map(({ evidence }) => evidence)),
    accepted: textColumn(accepted),
    source_file: textColumn(lines.map(({ firstRow }) => columns.files[columns.fileOf(firstRow)])),
    source_line: counted(({ firstRow }) => columns.lines[firstRow]),
  };
  return makeTable(proposalsSchema.map(({ name }): [string, Column] => [name, values[name]]));
}

type ProposalLine = Omit<Naming, 'kind' | 'eachRow'> & { readonly kind: string };

interface NearMiss {
  readonly line: ProposalLine;
  readonly accepted: boolean;
}

/** Ids that are a character away from a registered one, with the first row of each. */
function nearMisses(columns: ReadingColumns, { strangers, merged }: UnitsMatched): NearMiss[] {
  const near = [
    ...strangers
      .filter(({ nearest }) => nearest !== '')
      .map(({ found, nearest }) => ({ found, to: nearest, accepted: false })),
    ...merged.map(({ found, registered }) => ({ found, to: registered, accepted: true })),
  ];
  const units = columns.texts.get('unit');
  if (near.length === 0 || !units) return [];
  const readings = new Int32Array(units.levels.length);
  const first = new Int32Array(units.levels.length);
  for (let row = 0; row < columns.rows; row++)
    if (columns.status[row] === ROW.accepted && readings[units.code(row)]++ === 0) first[units.code(row)] = row;
  return near.map(({ found, to, accepted }) => {
    const code = units.codeOfCanonical(accepted ? to : found);
    return {
      line: {
        kind: 'units',
        unit: found,
        readings: readings[code] ?? 0,
        wouldBe: to,
        evidence: say.oneCharacter(found, to),
        firstRow: first[code] ?? 0,
      },
      accepted,
    };
  });
}
