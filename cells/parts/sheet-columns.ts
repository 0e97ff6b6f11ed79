import type { ShownColumn } from '../../shared/cell.ts';
import type { Column } from '../../shared/table/table.ts';
import { shownValue } from './shown-value.ts';

/** Columns that name the row: they stay in view while the others are moved sideways. */
const NAMING = new Set(['unit', 'analyzer', 'file']);
/** Sentences: they get room. */
const WIDEST_CH = 46;
const NARROWEST_CH = 7;

/** Widths in px from the heads and the first rows at hand: what is measured once stays, so that nothing jumps. */
export function columnWidths(
  shown: readonly ShownColumn[],
  columns: ReadonlyMap<string, Column> | undefined,
  rows: number,
  chPx: number,
): number[] {
  return shown.map((column) => {
    const words = column.title.split(' ').map((word) => word.length + 2);
    let ch = Math.max(NARROWEST_CH, ...words, Math.ceil(column.title.length * 0.45) + 2, column.unit.length + 3);
    const values = columns?.get(column.column);
    for (let row = 0; row < Math.min(rows, 60); row++)
      ch = Math.max(ch, shownValue(column, values, row).length + (values?.kind === 'text' ? 2 : 3));
    return Math.round(Math.min(ch, WIDEST_CH) * chPx + 22);
  });
}

/** How many columns from the left stay in view. */
export function heldColumns(shown: readonly ShownColumn[]): number {
  return shown.length > 1 && NAMING.has(shown[0].column) ? 1 : 0;
}

/** Height of the heads in px: one line, or two and the unit below. */
export function headPx(shown: readonly ShownColumn[], widths: readonly number[], chPx: number): number {
  const isTall = shown.some(({ title, unit }, i) => unit !== '' || title.length * chPx * 0.85 + 22 > widths[i]);
  return isTall ? 74 : 46;
}

/** Tables up to so many columns are drawn whole: they are read through, and searched by the browser. */
const FEW_COLUMNS = 16;
/** Drawn beyond the edges of the view, so that a scroll finds columns there. */
const BESIDE_PX = 320;

/**
 * The columns to draw of a sheet that is looked at from `fromPx` on over `widePx`: those in view and a little beside it,
 * the held ones, and the one that the user stands on.
 */
export function columnsInView(
  widths: readonly number[],
  held: number,
  here: number,
  fromPx: number,
  widePx: number,
): number[] {
  const all = widths.map((_, index) => index);
  if (widths.length <= FEW_COLUMNS) return all;
  let edge = 0;
  const left = widths.map((px) => {
    edge += px;
    return edge - px;
  });
  return all.filter(
    (index) =>
      index < held ||
      index === here ||
      (left[index] + widths[index] >= fromPx - BESIDE_PX && left[index] <= fromPx + widePx + BESIDE_PX),
  );
}
