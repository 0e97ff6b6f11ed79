import type { Blank } from '../cell.ts';
import { cellBlank } from './cell-blank.ts';

/** The blank that names the register, for cells that can do without one. */
export const registerBlank = (name: string): Blank =>
  cellBlank('register', 'register', name, ['register'], { optional: true });
