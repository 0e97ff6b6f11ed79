import { CANONICAL, type Dialect } from '../../../shared/csv/dialect.ts';
import { RecordReader } from '../../../shared/csv/record-reader.ts';

export interface ReadRecord {
  readonly fields: readonly string[];
  readonly line: number;
  readonly fault: string;
}

/** All records of a text that comes in pieces of the given length. */
export function recordsOf(text: string, dialect: Dialect = CANONICAL, piece = text.length || 1): ReadRecord[] {
  const reader = new RecordReader(dialect);
  const found: ReadRecord[] = [];
  const take = (part: string, last: boolean): void => {
    const batch = reader.push(part, last);
    batch.rows.forEach((fields, i) => {
      found.push({ fields, line: batch.lineOf(i), fault: batch.faults.get(i) ?? '' });
    });
  };
  for (let from = 0; from < text.length; from += piece) take(text.slice(from, from + piece), false);
  take('', true);
  return found;
}

export const fieldsOf = (records: readonly ReadRecord[]): (readonly string[])[] => records.map(({ fields }) => fields);
