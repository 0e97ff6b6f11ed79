import { expect, test } from 'vitest';
import { numberColumn, textAt, textColumn, textsOf } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { rowPage } from '../../../src/notebook/row-page.ts';

const rows = 10_000;
const table = makeTable([
  ['note', textColumn(Array.from({ length: rows }, (_, row) => (row % 10 === 3 ? '' : `note ${row}`)))],
  ['unit', textColumn(Array.from({ length: rows }, (_, row) => `B-${row % 7}`))],
  [
    'o2_pct',
    numberColumn(
      '%',
      Float64Array.from({ length: rows }, (_, row) => (row * 7919) % rows),
    ),
  ],
]);

test('a page carries its own texts and no others', () => {
  const page = rowPage(table, { table: 'accepted', from: 5000, to: 5010 });
  const notes = textsOf({ rows: 10, columns: page.columns }, 'note');
  expect(page.total).toBe(rows);
  expect(notes.levels.length).toBe(9);
  expect([0, 3, 9].map((row) => textAt(notes, row))).toEqual(['note 5000', '', 'note 5009']);
});

test('pages of one order join without a gap, filtered or not', () => {
  const range = { table: 'accepted', sort: { column: 'o2_pct', descending: true } };
  const values = [0, 200, 400].flatMap((from) => {
    const column = rowPage(table, { ...range, from, to: from + 200 }).columns.get('o2_pct');
    return column?.kind === 'number' ? [...column.values] : [];
  });
  expect(values).toEqual(Array.from({ length: 600 }, (_, i) => rows - 1 - i));
  const filtered = rowPage(table, { ...range, filter: { column: 'unit', text: 'B-3' }, from: 0, to: 5 });
  expect(filtered.total).toBe(Math.ceil((rows - 3) / 7));
  // The other order is found again after the filter.
  expect(rowPage(table, { ...range, from: 0, to: 1 }).total).toBe(rows);
});

test('a range beyond the end or turned around is empty, not a fault', () => {
  expect(rowPage(table, { table: 'accepted', from: rows + 5, to: rows + 9 }).columns.get('unit')).toMatchObject({
    codes: new Int32Array(0),
  });
  expect(rowPage(table, { table: 'accepted', from: 9, to: 3 }).from).toBe(9);
});
