/**
 * The table that flows between cells: typed columns of equal length under names that carry their unit.
 * A table is immutable and structured-cloneable; whoever wants another builds another.
 * Unknown is NaN in a number or date column and code -1 in a text column.
 */
export interface NumberColumn {
  readonly kind: 'number';
  /** UCUM code of the values' unit; '1' for a pure number. */
  readonly unit: string;
  readonly values: Float64Array;
  /** Per row: 0 exact, 1 the true value is at least this (">4000"), -1 at most this ("<5"). Absent when all are exact. */
  readonly bounds?: Int8Array;
}

/** Wall-clock time as days since 1970-01-01T00:00, fractions allowed; no time zone is known or assumed. */
export interface DateColumn {
  readonly kind: 'date';
  readonly values: Float64Array;
}

/** Dictionary-encoded text: row i holds levels[codes[i]], or is unknown where the code is -1. */
export interface TextColumn {
  readonly kind: 'text';
  readonly codes: Int32Array;
  readonly levels: readonly string[];
}

export type Column = NumberColumn | DateColumn | TextColumn;

export interface Table {
  readonly rows: number;
  /** In display order. */
  readonly columns: ReadonlyMap<string, Column>;
}

/** @throws RangeError when the columns differ in length: a programming error, never the user's. */
export function makeTable(columns: Iterable<readonly [string, Column]>): Table {
  const map = new Map(columns);
  let rows = -1;
  for (const [name, column] of map) {
    const length = column.kind === 'text' ? column.codes.length : column.values.length;
    if (rows === -1) rows = length;
    else if (rows !== length) throw new RangeError(`column ${name} has ${length} rows, the others ${rows}`);
  }
  return { rows: Math.max(rows, 0), columns: map };
}
