import { readingsSchema } from '../schemas/readings.ts';
import { type Column, makeTable, type Table } from '../table/table.ts';
import { READING_FIELDS } from './fields.ts';
import type { GrowingNumbers, GrowingTexts } from './growing-columns.ts';
import { type ReadingColumns, ROW } from './reading-columns.ts';

/**
 * The accepted readings as a table of the readings schema, sorted by unit, time, fire, state and source order. Memory of
 * the growing columns is let go one column at a time; columns of which nothing was read share one array of unknowns.
 */
export function buildTable(columns: ReadingColumns): Table {
  const order = sortedRows(columns);
  const inPlace = order.length === columns.rows && order.every((row, i) => row === i);
  const noNumbers = new Float64Array(order.length).fill(Number.NaN);
  const noTexts = new Int32Array(order.length).fill(-1);
  const byColumn = new Map(READING_FIELDS.map((field) => [field.column, field.name]));
  const built = readingsSchema.map(({ name, kind, unit }): [string, Column] => {
    const field = byColumn.get(name) ?? name;
    if (name === 'source_file') return [name, fileColumn(columns, order)];
    if (name === 'source_line') return [name, { kind: 'number', unit, values: lineNumbers(columns.lines, order) }];
    if (kind === 'text') return [name, takeTexts(columns.texts.get(field), order, inPlace, noTexts, DEFAULTS[name])];
    const column = columns.numbers.get(field);
    const values = column && column.values.length > 0 ? takeNumbers(column, order, inPlace) : noNumbers;
    if (kind === 'date') return [name, { kind, values }];
    const bounds = column ? takeBounds(column, order) : undefined;
    return [name, bounds ? { kind, unit, values, bounds } : { kind, unit, values }];
  });
  return makeTable(built);
}

/** What an empty cell of these columns means. */
const DEFAULTS: Readonly<Record<string, string>> = { fire: 'unnamed', state: 'unknown' };

function sortedRows(columns: ReadingColumns): Int32Array {
  const unit = ranks(columns.texts.get('unit'));
  const fire = ranks(columns.texts.get('fire'), DEFAULTS['fire']);
  const state = ranks(columns.texts.get('state'), DEFAULTS['state']);
  const taken = columns.numbers.get('taken_at')!;
  const starts = new Int32Array(unit.count + 2);
  let accepted = 0;
  for (let row = 0; row < columns.rows; row++) {
    if (columns.status[row] !== ROW.accepted) continue;
    accepted++;
    starts[unit.of(row) + 2]++;
  }
  for (let i = 1; i < starts.length; i++) starts[i] += starts[i - 1];
  const order = new Int32Array(accepted);
  for (let row = 0; row < columns.rows; row++)
    if (columns.status[row] === ROW.accepted) order[starts[unit.of(row) + 1]++] = row;
  const compare = (a: number, b: number): number =>
    taken.values[a] - taken.values[b] || fire.of(a) - fire.of(b) || state.of(a) - state.of(b) || a - b;
  for (let i = 0; i <= unit.count; i++) {
    const bucket = order.subarray(starts[i], starts[i + 1]);
    if (!isSorted(bucket, compare)) bucket.sort(compare);
  }
  return order;
}

function isSorted(rows: Int32Array, compare: (a: number, b: number) => number): boolean {
  for (let i = 1; i < rows.length; i++) if (compare(rows[i - 1], rows[i]) > 0) return false;
  return true;
}

/** Place of each row's text among the levels in code-unit order. */
function ranks(column: GrowingTexts | undefined, empty = ''): { of: (row: number) => number; count: number } {
  const levels = [...new Set([...(column?.levels ?? []), empty])].sort((a, b) => (a < b ? -1 : 1));
  const rank = new Map(levels.map((level, i) => [level, i]));
  const byCode = Int32Array.from(column?.levels ?? [], (level) => rank.get(level) ?? 0);
  const unknown = rank.get(empty) ?? 0;
  return {
    of: (row) => {
      const code = column?.code(row) ?? -1;
      return code < 0 ? unknown : byCode[code];
    },
    count: levels.length,
  };
}

function lineNumbers(lines: Int32Array, order: Int32Array): Float64Array {
  const values = new Float64Array(order.length);
  for (let i = 0; i < order.length; i++) values[i] = lines[order[i]];
  return values;
}

function takeNumbers(column: GrowingNumbers, order: Int32Array, inPlace: boolean): Float64Array {
  const { values } = column;
  column.values = new Float64Array(0);
  if (inPlace && values.length >= order.length) return values.subarray(0, order.length);
  const taken = new Float64Array(order.length);
  for (let i = 0; i < order.length; i++) taken[i] = order[i] < values.length ? values[order[i]] : Number.NaN;
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
  order: Int32Array,
  inPlace: boolean,
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
  const taken = new Int32Array(order.length);
  for (let i = 0; i < order.length; i++) {
    const code = order[i] < codes.length ? codes[order[i]] : -1;
    taken[i] = code < 0 ? missing : code;
  }
  return { kind: 'text', codes: taken, levels };
}

function fileColumn(columns: ReadingColumns, order: Int32Array): Column {
  const codes = new Int32Array(order.length);
  if (columns.files.length > 1) for (let i = 0; i < order.length; i++) codes[i] = columns.fileOf(order[i]);
  return { kind: 'text', codes, levels: [...columns.files] };
}
