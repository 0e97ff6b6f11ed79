import { expect, test } from 'vitest';
import { columnsInView } from '../../../cells/parts/sheet-columns.ts';

const WIDTHS = new Array<number>(40).fill(100);

test('a wide sheet draws the columns in view and a little beside it, the held ones, and the one that the user stands on', () => {
  const drawn = columnsInView(WIDTHS, 1, 39, 1500, 800);
  expect(drawn[0]).toBe(0);
  expect(drawn.at(-1)).toBe(39);
  for (let column = 15; column < 23; column++) expect(drawn).toContain(column);
  expect(drawn.length).toBeLessThan(20);
});

test('a narrow one is drawn whole', () => {
  expect(columnsInView(WIDTHS.slice(0, 16), 1, 0, 0, 300)).toHaveLength(16);
});
