/**
 * Arithmetic of a sheet that shows a window onto any number of rows.
 * Browsers stop element heights (33,554,428 px in Chromium, 17.9 million in Firefox), so beyond RAIL_LIMIT_PX the
 * scroll bar's position is mapped to rows, while small movements (wheel, touch) still move row by row.
 */
export const RAIL_LIMIT_PX = 16_000_000;

export interface SheetGeometry {
  readonly rows: number;
  readonly rowPx: number;
  /** Height of the visible part, in px. */
  readonly viewPx: number;
}

export interface SheetPosition {
  readonly scrollPx: number;
  /** First visible row, with the fraction of it that is scrolled away. */
  readonly top: number;
}

/** Height of the scrolled content. */
export function railPx({ rows, rowPx, viewPx }: SheetGeometry): number {
  return Math.max(viewPx, Math.min(rows * rowPx, RAIL_LIMIT_PX));
}

/** The largest possible `top`. */
export function lastTop({ rows, rowPx, viewPx }: SheetGeometry): number {
  return Math.max(0, rows - viewPx / rowPx);
}

/** The row that the scroll bar alone points at. */
export function topAtScroll(geometry: SheetGeometry, scrollPx: number): number {
  const travel = railPx(geometry) - geometry.viewPx;
  return travel <= 0 ? 0 : (Math.min(Math.max(scrollPx, 0), travel) / travel) * lastTop(geometry);
}

/** Where the scroll bar stands for a row. */
export function scrollAtTop(geometry: SheetGeometry, top: number): number {
  const last = lastTop(geometry);
  const travel = railPx(geometry) - geometry.viewPx;
  return last <= 0 ? 0 : Math.round((Math.min(Math.max(top, 0), last) / last) * travel);
}

/** The position after a scroll event: a step of less than a view moves by its own pixels, a jump goes where the bar points. */
export function positionAfter(geometry: SheetGeometry, before: SheetPosition, scrollPx: number): SheetPosition {
  const travel = railPx(geometry) - geometry.viewPx;
  const step = scrollPx - before.scrollPx;
  const atAnEnd = scrollPx <= 0 || scrollPx >= travel - 1;
  if (atAnEnd || Math.abs(step) >= geometry.viewPx) return { scrollPx, top: topAtScroll(geometry, scrollPx) };
  const top = Math.min(Math.max(before.top + step / geometry.rowPx, 0), lastTop(geometry));
  return { scrollPx, top };
}

/** The smallest move of `top` that brings a row fully into view. */
export function topShowing({ rowPx, viewPx }: SheetGeometry, top: number, row: number): number {
  if (row < top) return row;
  const bottom = row + 1 - viewPx / rowPx;
  return bottom > top ? Math.max(0, bottom) : top;
}
