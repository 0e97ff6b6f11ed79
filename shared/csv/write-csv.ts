import { writeIsoDate } from '../quantities/dates.ts';
import { twelveDigits } from '../quantities/twelve-digits.ts';
import type { Column, DateColumn, NumberColumn, Table, TextColumn } from '../table/table.ts';

const ROWS_PER_PIECE = 4096;
const END = '\r\n';

/**
 * A table as CSV by RFC 4180 (https://www.rfc-editor.org/rfc/rfc4180): header first, commas, CRLF after every record.
 * It comes in pieces, so that a large table is never one string; the pieces joined and encoded as UTF-8 without a byte
 * order mark are the file. Numbers carry 12 significant digits, a bound its mark (`>4000`), dates are ISO 8601,
 * unknown is an empty field.
 */
export function* writeCsv(table: Table): Generator<string> {
  const columns = [...table.columns];
  yield columns.map(([name]) => quoted(name)).join(',') + END;
  const writers = columns.map(([, column]) => fieldWriter(column));
  // A lone empty field would be an empty line, which readers skip.
  const alone = writers.length === 1;
  for (let from = 0; from < table.rows; from += ROWS_PER_PIECE) {
    let piece = '';
    for (let row = from; row < Math.min(from + ROWS_PER_PIECE, table.rows); row++) {
      let line = '';
      for (let i = 0; i < writers.length; i++) line += i === 0 ? writers[i](row) : `,${writers[i](row)}`;
      piece += (alone && line === '' ? '""' : line) + END;
    }
    yield piece;
  }
}

type FieldWriter = (row: number) => string;

function fieldWriter(column: Column): FieldWriter {
  if (column.kind === 'text') return textWriter(column);
  if (column.kind === 'number') return numberWriter(column);
  return dateWriter(column);
}

/** Rows of one visit stand together, so the day written last is often the next one too. */
function dateWriter({ values }: DateColumn): FieldWriter {
  let last = Number.NaN;
  let text = '';
  return (row) => {
    if (values[row] !== last) {
      last = values[row];
      text = writeIsoDate(last);
    }
    return text;
  };
}

function textWriter({ codes, levels }: TextColumn): FieldWriter {
  const fields = levels.map(quoted);
  return (row) => (codes[row] < 0 ? '' : fields[codes[row]]);
}

function numberWriter({ values, bounds }: NumberColumn): FieldWriter {
  if (!bounds) return (row) => twelveDigits(values[row]);
  return (row) => {
    const text = twelveDigits(values[row]);
    if (bounds[row] === 0 || text === '') return text;
    return (bounds[row] > 0 ? '>' : '<') + text;
  };
}

function quoted(field: string): string {
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}
