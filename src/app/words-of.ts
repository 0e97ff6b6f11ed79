import { textsOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/** The different texts that the rows of a column hold, in the order of the alphabet; none where there is no such column. */
export function wordsOf(table: Table | undefined, column: string): readonly string[] {
  if (table?.columns.get(column)?.kind !== 'text') return [];
  const { levels, codes } = textsOf(table, column);
  const used = new Uint8Array(levels.length);
  for (const code of codes) if (code >= 0) used[code] = 1;
  return levels.filter((_, code) => used[code] === 1).sort();
}
