import { textAt, textsOf } from './columns.ts';
import type { Table } from './table.ts';
import { groupRows } from './verbs.ts';

/** The key of a group: the texts of its columns, which hold no zero character. */
export const groupKey = (...texts: readonly string[]): string => texts.join('\u0000');

/**
 * Row numbers of each group, in table order, under the group's key; groups stand in order of first appearance. The columns
 * are text; unknown is '' and agrees with unknown.
 */
export function rowsByKey(table: Table, columns: readonly string[]): ReadonlyMap<string, readonly number[]> {
  const { of, count, firstRow } = groupRows(table, columns);
  const rows: number[][] = Array.from({ length: count }, () => []);
  for (let row = 0; row < table.rows; row++) rows[of[row]].push(row);
  const texts = columns.map((name) => textsOf(table, name));
  return new Map(rows.map((list, group) => [groupKey(...texts.map((text) => textAt(text, firstRow[group]))), list]));
}
