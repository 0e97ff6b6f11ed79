import { takeRows } from '../../shared/table/columns.ts';
import { type Column, makeTable, type NumberColumn, type Table } from '../../shared/table/table.ts';
import { CHECKS } from './checks.ts';
import type { Finding } from './finding.ts';

/** As measured or air-free; from here on a reading stays whatever else is suspect about it. Common line for shutting down. */
const HIGH_CO_PPM = 400;

export interface Applied {
  readonly accepted: Table;
  /** Per finding: kept | value left out | reading left out. */
  readonly effects: readonly string[];
  /** Suspect readings in all, and those of them that a high CO keeps. */
  readonly suspectRows: number;
  readonly keptForCo: readonly number[];
}

/** The readings without impossible values and, where suspects are out, without suspect readings. */
export function applyFindings(readings: Table, findings: readonly Finding[], suspects: 'in' | 'out'): Applied {
  const blanked = new Map<string, number[]>();
  const suspect = new Set<number>();
  for (const { check, row, columns } of findings) {
    if (CHECKS[check].severity === 'suspect') suspect.add(row);
    if (CHECKS[check].severity !== 'impossible') continue;
    for (const column of columns) {
      const list = blanked.get(column);
      if (list) list.push(row);
      else blanked.set(column, [row]);
    }
  }
  const keptForCo = [...suspect].filter((row) => hasHighCo(readings, row)).sort((a, b) => a - b);
  const out = new Set(suspects === 'out' ? suspect : []);
  for (const row of keptForCo) out.delete(row);
  const kept = Int32Array.from(Array.from({ length: readings.rows }, (_, row) => row).filter((row) => !out.has(row)));
  const columns = [...readings.columns].map(([name, column]): [string, Column] => {
    const clean = without(column, blanked.get(name));
    return [name, out.size > 0 ? takeRows(clean, kept) : clean];
  });
  const effects = findings.map(({ check, row }) => {
    if (out.has(row)) return 'reading left out';
    return CHECKS[check].severity === 'impossible' ? 'value left out' : 'kept';
  });
  return { accepted: makeTable(columns), effects, suspectRows: suspect.size, keptForCo };
}

function without(column: Column, rows: readonly number[] | undefined): Column {
  if (!rows || column.kind === 'text') return column;
  const values = column.values.slice();
  for (const row of rows) values[row] = Number.NaN;
  return { ...column, values };
}

function hasHighCo(readings: Table, row: number): boolean {
  return ['co_ppm', 'co_air_free_ppm'].some((name) => {
    const column = readings.columns.get(name) as NumberColumn | undefined;
    return column?.kind === 'number' && column.values[row] >= HIGH_CO_PPM;
  });
}
