import type { Blank } from '../cell.ts';
import { cellBlank } from './cell-blank.ts';

/** The blank that names the readings, as imported or as corrected. Without readings there is nothing to say. */
export const readingsBlank = (name: string): Blank =>
  cellBlank('readings', 'readings', name, ['readings', 'corrections', 'checks']);
