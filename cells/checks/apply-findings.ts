import { type Column, makeTable, type NumberColumn, type Table } from '../../shared/table/table.ts';
import { takeTable } from '../../shared/table/take-table.ts';
import { CHECKS } from './checks.ts';
import type { Finding } from './finding.ts';

/** As measured or air-free; from here on a reading stays whatever else is suspect about it. Common line for shutting down. */
const HIGH_CO_PPM = 400;

export interface Applied {
  readonly accepted: Table;
  /** What became of a row that a finding touches. */
  effect(finding: Finding, row: number): Effect;
  /** Suspect readings in all, and those of them that a high CO keeps. */
  readonly suspectRows: number;
  readonly keptForCo: readonly number[];
  /** Readings with a high CO of which an impossible value was left out. */
  readonly highCoWithout: readonly number[];
}

export type Effect = 'kept' | 'value left out' | 'reading left out';

/** The readings without impossible values and, where suspects are out, without suspect readings. */
export function applyFindings(readings: Table, findings: readonly Finding[], suspects: 'in' | 'out'): Applied {
  const blanked = new Map<string, number[]>();
  const suspect = new Set<number>();
  const impossible = new Set<number>();
  for (const { check, rows, columns } of findings) {
    const { severity } = CHECKS[check];
    if (severity === 'suspect') for (const row of rows) suspect.add(row);
    if (severity !== 'impossible') continue;
    for (const row of rows) impossible.add(row);
    for (const column of columns) blanked.set(column, [...(blanked.get(column) ?? []), ...rows]);
  }
  const highCo = (rows: ReadonlySet<number>): number[] =>
    [...rows].filter((row) => hasHighCo(readings, row)).sort((a, b) => a - b);
  const keptForCo = highCo(suspect);
  const out = new Set(suspects === 'out' ? suspect : []);
  for (const row of keptForCo) out.delete(row);
  const columns = [...readings.columns].map(([name, column]): [string, Column] => [
    name,
    without(column, blanked.get(name)),
  ]);
  const clean = makeTable(columns);
  return {
    accepted: out.size > 0 ? withoutRows(clean, out) : clean,
    effect: ({ check }, row) => {
      if (out.has(row)) return 'reading left out';
      return CHECKS[check].severity === 'impossible' ? 'value left out' : 'kept';
    },
    suspectRows: suspect.size,
    keptForCo,
    highCoWithout: highCo(impossible),
  };
}

function withoutRows(table: Table, out: ReadonlySet<number>): Table {
  const kept = new Int32Array(table.rows - out.size);
  for (let row = 0, i = 0; row < table.rows; row++) if (!out.has(row)) kept[i++] = row;
  return takeTable(table, kept);
}

function without(column: Column, rows: readonly number[] | undefined): Column {
  if (!rows || column.kind === 'text') return column;
  const values = column.values.slice();
  for (const row of rows) values[row] = Number.NaN;
  if (column.kind === 'date' || !column.bounds) return { ...column, values };
  const bounds = column.bounds.slice();
  for (const row of rows) bounds[row] = 0;
  return { ...column, values, bounds };
}

function hasHighCo(readings: Table, row: number): boolean {
  return ['co_ppm', 'co_air_free_ppm'].some((name) => {
    const column = readings.columns.get(name) as NumberColumn | undefined;
    return column?.kind === 'number' && column.values[row] >= HIGH_CO_PPM;
  });
}
