import type { ShownColumn } from '../cell.ts';

/** The columns as shown, those named marked as showing their working. */
export const workedColumns = (columns: readonly ShownColumn[], worked: readonly string[]): readonly ShownColumn[] =>
  columns.map((shown) => (worked.includes(shown.column) ? { ...shown, worked: true } : shown));
