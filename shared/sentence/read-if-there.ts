import type { CellName, Read } from '../cell.ts';
import { readOf } from './read-of.ts';

/** What is read of the named cell while that one has a result; the reader goes without it where it has none. */
export const readIfThere = (cell: CellName, ...tables: string[]): Read[] =>
  readOf(cell, ...tables).map((read) => ({ ...read, optional: true }));
