import type { Figure } from '../../shared/cell.ts';
import { axisTitle, chartAlternative, chartTitle, others } from '../../shared/messages/chart.ts';
import { columnTitle } from '../../shared/schemas/column-title.ts';
import { textAt } from '../../shared/table/columns.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import type { ChartParameters } from './parameters.ts';

/** More points than this make no better picture, and a slow one. */
export const MOST_POINTS = 5000;
/** Shapes and colors that can be told apart; the palette has seven and one is kept for the others. */
export const MOST_COLORS = 6;
const MS_PER_DAY = 86_400_000;

/** The rows to draw: all, or every n-th where there are too many, in their order. */
export function thinOut(rows: ArrayLike<number>): number[] {
  const step = Math.max(1, Math.ceil(rows.length / MOST_POINTS));
  return Array.from({ length: Math.ceil(rows.length / step) }, (_, i) => rows[i * step]);
}

/** Levels of the color column by how often they occur in the rows, most first. */
export function commonLevels(column: Column | undefined, rows: readonly number[]): string[] {
  if (column?.kind !== 'text') return [];
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(textAt(column, row), (counts.get(textAt(column, row)) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([level]) => level);
}

/** Points of two columns, told apart by a third: a Vega-Lite specification with finished values under generated names. */
export function drawPoints(table: Table, rows: readonly number[], parameters: ChartParameters): Figure {
  const { x, y, color } = parameters;
  const [across, up, by] = [x, y, color].map((name) => table.columns.get(name));
  const levels = commonLevels(by, rows);
  const shown = levels.slice(0, levels.length > MOST_COLORS ? MOST_COLORS - 1 : MOST_COLORS);
  const values = rows.map((row) => ({
    f0: across && valueAt(across, row),
    f1: up && valueAt(up, row),
    ...(by ? { f2: by.kind === 'text' ? groupOf(textAt(by, row), shown) : valueAt(by, row) } : {}),
  }));
  return {
    name: 'points',
    title: chartTitle(columnTitle(x), columnTitle(y)),
    alternative: chartAlternative(
      columnTitle(x),
      columnTitle(y),
      color === '' ? '' : columnTitle(color),
      rows.length,
      parameters.table,
    ),
    specification: {
      $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
      height: 360,
      data: { values },
      mark: { type: 'point', opacity: 0.75, size: 42 },
      encoding: {
        x: axis('f0', across, x),
        y: axis('f1', up, y),
        ...(by ? tellApart(by, color, shown, levels.length > shown.length) : {}),
      },
    },
  };
}

const groupOf = (level: string, shown: readonly string[]): string =>
  shown.includes(level) ? level || 'unknown' : others();

function valueAt(column: Column, row: number): number | string | null {
  if (column.kind === 'text') return textAt(column, row);
  const value = column.values[row];
  if (!Number.isFinite(value)) return null;
  return column.kind === 'date' ? Math.round(value * MS_PER_DAY) : value;
}

/** Dates are wall-clock days, so the axis counts in UTC; numbers do not begin at zero, since bands are narrow. */
function axis(field: string, column: Column | undefined, name: string): Record<string, unknown> {
  const title = axisTitle(columnTitle(name), column?.kind === 'number' && column.unit !== '1' ? column.unit : '');
  if (column?.kind === 'text') return { field, type: 'nominal', title };
  if (column?.kind === 'date') return { field, type: 'temporal', title, scale: { type: 'utc' } };
  return { field, type: 'quantitative', title, scale: { zero: false } };
}

/** Color and shape together: color alone tells some readers nothing. */
function tellApart(
  column: Column,
  name: string,
  shown: readonly string[],
  more: boolean,
): Record<string, Record<string, unknown>> {
  const title = axisTitle(columnTitle(name), column.kind === 'number' && column.unit !== '1' ? column.unit : '');
  if (column.kind !== 'text')
    return {
      color: {
        field: 'f2',
        title,
        type: column.kind === 'date' ? 'temporal' : 'quantitative',
        ...(column.kind === 'date' ? { scale: { type: 'utc' } } : {}),
      },
    };
  const domain = [...shown.map((level) => level || 'unknown'), ...(more ? [others()] : [])];
  const channel = { field: 'f2', type: 'nominal', title, scale: { domain } };
  return { color: channel, shape: channel };
}
