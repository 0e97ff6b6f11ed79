import type { CellContext, CellResult, Figure, Inputs, Remark } from '../../shared/cell.ts';
import { chartAnswer, noColumn, noTable, thinned, tooManyColors } from '../../shared/messages/chart.ts';
import { nearestName } from '../../shared/names/nearest-name.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';
import { columnTitle } from '../../shared/schemas/column-title.ts';
import { takeRows } from '../../shared/table/columns.ts';
import { type Column, makeTable, type Table } from '../../shared/table/table.ts';
import { commonLevels, drawPoints, MOST_COLORS, thinOut } from './draw-points.ts';
import { keepRows } from './keep-rows.ts';
import type { ChartParameters } from './parameters.ts';

export interface ChartResult extends CellResult {
  readonly answer: string;
  readonly figures: readonly Figure[];
  readonly remarks: readonly Remark[];
  /** Columns of the table drawn, with their units, in the order x, y, color. */
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
}

export async function compute(
  parameters: ChartParameters,
  inputs: Inputs,
  _context: CellContext,
): Promise<Outcome<ChartResult>> {
  const tables = inputs.get(parameters.cell)?.tables ?? {};
  const table = Object.hasOwn(tables, parameters.table) ? tables[parameters.table] : undefined;
  if (!table) return fail(noTable(parameters.cell, parameters.table, Object.keys(tables).join(', ')));
  const missing = missingColumn(table, parameters);
  if (missing) return fail(missing);
  const kept = keepRows(table, parameters.where);
  if (kept.status !== 'value') return kept;
  return succeed(draw(table, kept.value, parameters));
}

function missingColumn(table: Table, parameters: ChartParameters): string {
  const names = [...table.columns.keys()];
  for (const axis of ['x', 'y', 'color'] as const) {
    const name = parameters[axis];
    if ((axis === 'color' && name === '') || table.columns.has(name)) continue;
    return noColumn(axis, name, parameters.table, nearestName(name, names), names.join(', '));
  }
  return '';
}

function draw(table: Table, kept: Uint32Array, parameters: ChartParameters): ChartResult {
  const { x, y, color } = parameters;
  const [across, up] = [x, y].map((name) => table.columns.get(name) as Column);
  const known = kept.filter((row) => isKnown(across, row) && isKnown(up, row));
  const rows = thinOut(known);
  const names = [...new Set([x, y, ...(color === '' ? [] : [color])])];
  const drawn = makeTable(names.map((name) => [name, takeRows(table.columns.get(name) as Column, rows)]));
  const levels = commonLevels(table.columns.get(color), rows);
  const remarks = [
    rows.length < known.length ? thinned(rows.length, known.length) : '',
    levels.length > MOST_COLORS
      ? tooManyColors(columnTitle(color), levels.length, levels.slice(0, MOST_COLORS - 1))
      : '',
  ].filter((text) => text !== '');
  return {
    tables: { drawn },
    answer: chartAnswer(columnTitle(x), columnTitle(y), rows.length, known.length, table.rows),
    figures: rows.length > 0 ? [drawPoints(table, rows, parameters)] : [],
    remarks: remarks.map((text) => ({ severity: 'note', text })),
    columns: names.map((name) => {
      const column = table.columns.get(name);
      return { name, unit: column?.kind === 'number' && column.unit !== '1' ? column.unit : '' };
    }),
  };
}

const isKnown = (column: Column, row: number): boolean =>
  column.kind === 'text' ? column.codes[row] >= 0 : Number.isFinite(column.values[row]);
