import type { CellName, Read } from '../cell.ts';

/** What is read of the named cell; nothing where none is named. */
export const readOf = (cell: CellName, ...tables: string[]): Read[] => (cell === '' ? [] : [{ cell, tables }]);
