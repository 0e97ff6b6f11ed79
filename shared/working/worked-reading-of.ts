import { writeIsoDate } from '../quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';
import type { WorkedReading } from './worked-reading.ts';

/** The reading at a row of what was derived, and where the readings say that it stands; both tables have the same rows. */
export function workedReading(derived: Table, readings: Table, row: number, fields: readonly string[]): WorkedReading {
  const text = (name: string): string => textAt(textsOf(readings, name), row);
  return {
    unit: text('unit'),
    takenAt: writeIsoDate(numbersOf(readings, 'taken_at')[row]),
    fire: text('fire'),
    state: text('state'),
    fuel: textAt(textsOf(derived, 'fuel'), row),
    file: text('source_file'),
    line: numbersOf(readings, 'source_line')[row],
    fields,
  };
}
