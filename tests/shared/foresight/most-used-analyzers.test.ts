import { expect, test } from 'vitest';
import { MOST_ANALYZERS, mostUsedAnalyzers } from '../../../shared/foresight/most-used-analyzers.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import type { TextColumn } from '../../../shared/table/table.ts';

test('of more analyzers than can be told apart those with the most readings are, in the order of the file', () => {
  const ids = Array.from({ length: MOST_ANALYZERS + 50 }, (_, i) => `A-${i}`);
  // The last hundred read twice, the first fifty once.
  const column = textColumn([...ids, ...ids.slice(50), '']) as TextColumn;
  const { codes, names } = mostUsedAnalyzers(column, [...column.codes.keys()]);
  expect(names).toEqual(ids.slice(50));
  expect(codes[0]).toBe(-1);
  expect(names[codes[50]]).toBe('A-50');
  expect(codes[codes.length - 1]).toBe(-1);
});

test('a few are all kept', () => {
  const column = textColumn(['B', 'A', '', 'B']) as TextColumn;
  expect(mostUsedAnalyzers(column, [0, 1, 2, 3])).toEqual({ codes: Int32Array.of(0, 1, -1, 0), names: ['B', 'A'] });
});
