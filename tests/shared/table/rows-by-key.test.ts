import { expect, test } from 'vitest';
import { textColumn } from '../../../shared/table/columns.ts';
import { groupKey, rowsByKey } from '../../../shared/table/rows-by-key.ts';
import { makeTable } from '../../../shared/table/table.ts';

test('rows stand under the texts of their keys, unknown under the empty text', () => {
  const table = makeTable([
    ['unit', textColumn(['b', 'a', 'b', '', 'b'])],
    ['fuel', textColumn(['gas', 'gas', 'oil', 'gas', 'gas'])],
  ]);
  expect([...rowsByKey(table, ['unit'])]).toEqual([
    ['b', [0, 2, 4]],
    ['a', [1]],
    ['', [3]],
  ]);
  expect(rowsByKey(table, ['unit', 'fuel']).get(groupKey('b', 'gas'))).toEqual([0, 4]);
});
