import { readingsSchema } from '../schemas/readings.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import { READING_FIELDS } from './fields.ts';
import type { GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import type { ReadingColumns } from './reading-columns.ts';
import { EMPTY_MEANS } from './sort-rows.ts';
import { SpareMemory } from './spare-memory.ts';

/**
 * The rows of `order` as a table of the readings schema, in that order. The growing columns give their memory to the ones
 * laid out after them; columns of which nothing was read share one array of unknowns.
 */
export function buildTable(columns: ReadingColumns, order: Int32Array): Table {
  const layout: Layout = {
    order,
    inPlace: isInPlace(columns.rows, order),
    numbers: new SpareMemory((length) => new Float64Array(length)),
    texts: new SpareMemory((length) => new Int32Array(length)),
  };
  const noNumbers = new Float64Array(order.length).fill(Number.NaN);
  const noTexts = new Int32Array(order.length).fill(-1);
  const byColumn = new Map(READING_FIELDS.map((field) => [field.column, field.name]));
  const built = readingsSchema.map(({ name, kind, unit }): [string, Column] => {
    const field = byColumn.get(name) ?? name;
    if (name === 'source_file') return [name, fileColumn(columns, layout)];
    if (name === 'source_line') return [name, { kind: 'number', unit, values: lineNumbers(columns.lines, layout) }];
    if (kind === 'text') return [name, takeTexts(columns.texts.get(field), layout, noTexts, EMPTY_MEANS[name])];
    const column = columns.numbers.get(field);
    const values = column && column.values.length > 0 ? takeNumbers(column, layout) : noNumbers;
    if (kind === 'date') return [name, { kind, values }];
    const bounds = column ? takeBounds(column, order) : undefined;
    return [name, bounds ? { kind, unit, values, bounds } : { kind, unit, values }];
  });
  return makeTable(built);
}

interface Layout {
  readonly order: Int32Array;
  /** Whether all rows stay where they are. */
  readonly inPlace: boolean;
  readonly numbers: SpareMemory<Float64Array>;
  readonly texts: SpareMemory<Int32Array>;
}

function isInPlace(rows: number, order: Int32Array): boolean {
  if (order.length !== rows) return false;
  for (let i = 0; i < rows; i++) if (order[i] !== i) return false;
  return true;
}

function lineNumbers(lines: Int32Array, { order, numbers }: Layout): Float64Array {
  const values = numbers.take(order.length);
  for (let i = 0; i < order.length; i++) values[i] = lines[order[i]];
  return values;
}

function takeNumbers(column: GrowingNumbers, { order, inPlace, numbers }: Layout): Float64Array {
  const { values } = column;
  column.values = new Float64Array(0);
  if (inPlace && values.length >= order.length) return values.subarray(0, order.length);
  const taken = numbers.take(order.length);
  // A row beyond the column's end reads as undefined, which becomes NaN.
  for (let i = 0; i < order.length; i++) taken[i] = values[order[i]];
  numbers.give(values);
  return taken;
}

/** Bound marks, undefined where all values are exact. */
function takeBounds({ bounds }: GrowingNumbers, order: Int32Array): Int8Array | undefined {
  if (!bounds) return undefined;
  const taken = new Int8Array(order.length);
  for (let i = 0; i < order.length; i++) if (order[i] < bounds.length) taken[i] = bounds[order[i]];
  return taken.some((bound) => bound !== 0) ? taken : undefined;
}

function takeTexts(
  column: GrowingTexts | undefined,
  { order, inPlace, texts }: Layout,
  unknown: Int32Array,
  empty: string | undefined,
): Column {
  if (!column || column.codes.length === 0) {
    if (empty === undefined) return { kind: 'text', codes: unknown, levels: [] };
    return { kind: 'text', codes: new Int32Array(order.length), levels: [empty] };
  }
  const missing = empty === undefined ? -1 : column.codeOfCanonical(empty);
  const { codes, levels } = column;
  column.codes = new Int32Array(0);
  if (inPlace && codes.length >= order.length && missing === -1)
    return { kind: 'text', codes: codes.subarray(0, order.length), levels };
  const taken = texts.take(order.length);
  for (let i = 0; i < order.length; i++) {
    const code = order[i] < codes.length ? codes[order[i]] : -1;
    taken[i] = code < 0 ? missing : code;
  }
  texts.give(codes);
  return { kind: 'text', codes: taken, levels };
}

function fileColumn(columns: ReadingColumns, { order, texts }: Layout): Column {
  const codes = texts.take(order.length);
  if (columns.files.length > 1) for (let i = 0; i < order.length; i++) codes[i] = columns.fileOf(order[i]);
  else codes.fill(0);
  return { kind: 'text', codes, levels: [...columns.files] };
}
