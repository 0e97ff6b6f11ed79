/** How a file writes a table as text. */
export interface Dialect {
  /** One character between fields; 'columns' where fields stand at fixed places of the line. */
  readonly delimiter: ',' | ';' | '\t' | '|' | 'columns';
  /** '\n' also reads CRLF; '\r' is for files that end their lines with it alone. */
  readonly newline: '\n' | '\r';
  /** For 'columns': where each field begins, in characters; the first is 0. */
  readonly starts: readonly number[];
}

export const CANONICAL: Dialect = { delimiter: ',', newline: '\n', starts: [] };
