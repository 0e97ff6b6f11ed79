import type { Remark } from '../cell.ts';
import * as say from '../messages/import.ts';
import { faultsSchema } from '../schemas/readings.ts';
import { numberColumn, textColumn } from '../table/columns.ts';
import { makeTable, type Table } from '../table/table.ts';
import type { CellFault } from './read-table.ts';

/** Further faults stand in the table of faults. */
const SHOWN = 5;

/** What could not be used of a small table, one sentence each for the first few. */
export function faultRemarks(faults: readonly CellFault[], notes: readonly string[]): Remark[] {
  const texts = faults.slice(0, SHOWN).map(({ file, line, reason }) => say.faultRemark(file, line, reason));
  const more = faults.length > SHOWN ? [say.moreFaults(faults.length - SHOWN)] : [];
  return [...notes, ...texts, ...more].map((text) => ({ severity: 'warning', text }));
}

/** The same as a table, all of them. */
export function faultTable(faults: readonly CellFault[]): Table {
  return makeTable([
    ['source_file', textColumn(faults.map(({ file }) => file))],
    [
      'source_line',
      numberColumn(
        faultsSchema[1].unit,
        Float64Array.from(faults, ({ line }) => line),
      ),
    ],
    ['reason', textColumn(faults.map(({ reason }) => reason))],
  ]);
}

/** Rows that are left out. */
export const leftOut = (faults: readonly CellFault[]): number => faults.filter(({ row }) => row === true).length;
