import type { CorrectedValue } from '../../shared/corrections/corrected-value.ts';
import type { Column, Table, TextColumn } from '../../shared/table/table.ts';

/** A text column that can be written to: its levels grow as texts come in. */
interface Draft {
  column: Column;
  codeOf?: Map<string, number>;
}

/** Writes single values into copies of a table's columns; a column nobody writes to stays the very same. */
export class ColumnEditor {
  readonly #table: Table;
  readonly #drafts = new Map<string, Draft>();

  constructor(table: Table) {
    this.#table = table;
  }

  text(name: string, row: number): string {
    const column = this.#drafts.get(name)?.column ?? this.#table.columns.get(name);
    if (column?.kind !== 'text') return '';
    return column.codes[row] < 0 ? '' : column.levels[column.codes[row]];
  }

  set(name: string, row: number, value: CorrectedValue): void {
    const draft = this.#draft(name);
    const { column } = draft;
    if (value.kind === 'text') {
      if (column.kind === 'text') column.codes[row] = this.#code(draft, column, value.value);
      return;
    }
    if (column.kind === 'text') return;
    column.values[row] = value.value;
    if (value.kind === 'number' && column.kind === 'number' && column.bounds) column.bounds[row] = value.bound;
  }

  columns(): ReadonlyMap<string, Column> {
    return new Map([...this.#table.columns].map(([name, column]) => [name, this.#drafts.get(name)?.column ?? column]));
  }

  #draft(name: string): Draft {
    const begun = this.#drafts.get(name);
    if (begun) return begun;
    const column = this.#table.columns.get(name);
    if (!column) throw new RangeError(`the readings have no column ${name}`);
    const draft: Draft = { column: copyOf(column) };
    this.#drafts.set(name, draft);
    return draft;
  }

  #code(draft: Draft, column: TextColumn, text: string): number {
    if (text === '') return -1;
    draft.codeOf ??= new Map(column.levels.map((level, code) => [level, code]));
    const known = draft.codeOf.get(text);
    if (known !== undefined) return known;
    const levels = [...column.levels, text];
    draft.codeOf.set(text, levels.length - 1);
    draft.column = { ...column, levels };
    return levels.length - 1;
  }
}

/** A copy that can be written to; a number column gets room for bounds, since a corrected value may be one. */
function copyOf(column: Column): Column {
  if (column.kind === 'text') return { ...column, codes: column.codes.slice() };
  if (column.kind === 'date') return { ...column, values: column.values.slice() };
  const { values, bounds } = column;
  return { ...column, values: values.slice(), bounds: bounds?.slice() ?? new Int8Array(values.length) };
}
