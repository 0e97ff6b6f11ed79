import type { Column, NumberColumn, Table, TextColumn } from './table.ts';

/** Values of a number or date column; all unknown (NaN) where the table has no such column. */
export function numbersOf(table: Table, name: string): Float64Array {
  const column = table.columns.get(name);
  if (column && column.kind !== 'text') return column.values;
  return new Float64Array(table.rows).fill(Number.NaN);
}

/** A text column; all unknown where the table has no such column. */
export function textsOf(table: Table, name: string): TextColumn {
  const column = table.columns.get(name);
  if (column?.kind === 'text') return column;
  return { kind: 'text', codes: new Int32Array(table.rows).fill(-1), levels: [] };
}

/** Text of one row, '' where unknown. */
export function textAt(column: TextColumn, row: number): string {
  const code = column.codes[row];
  return code < 0 ? '' : column.levels[code];
}

/** Bound marks of a number column (see NumberColumn.bounds); zeros where none are kept. */
export function boundsOf(table: Table, name: string): Int8Array {
  const column = table.columns.get(name);
  if (column?.kind === 'number' && column.bounds) return column.bounds;
  return new Int8Array(table.rows);
}

export function numberColumn(unit: string, values: Float64Array, bounds?: Int8Array): NumberColumn {
  return bounds ? { kind: 'number', unit, values, bounds } : { kind: 'number', unit, values };
}

/** Encodes texts; '' becomes unknown. Levels stand in order of first appearance. */
export function textColumn(texts: readonly string[]): TextColumn {
  const codes = new Int32Array(texts.length);
  const levels: string[] = [];
  const known = new Map<string, number>();
  texts.forEach((text, row) => {
    if (text === '') {
      codes[row] = -1;
      return;
    }
    let code = known.get(text);
    if (code === undefined) {
      code = levels.length;
      levels.push(text);
      known.set(text, code);
    }
    codes[row] = code;
  });
  return { kind: 'text', codes, levels };
}

/** The column restricted to the given rows, in that order. */
export function takeRows(column: Column, rows: ArrayLike<number>): Column {
  if (column.kind === 'text') {
    const codes = new Int32Array(rows.length);
    for (let i = 0; i < rows.length; i++) codes[i] = column.codes[rows[i]];
    return { ...column, codes };
  }
  const values = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) values[i] = column.values[rows[i]];
  if (column.kind === 'date') return { kind: 'date', values };
  if (!column.bounds) return { ...column, values };
  const bounds = new Int8Array(rows.length);
  for (let i = 0; i < rows.length; i++) bounds[i] = column.bounds[rows[i]];
  return { ...column, values, bounds };
}
