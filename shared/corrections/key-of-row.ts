import { writeIsoDate } from '../quantities/dates.ts';
import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table, TextColumn } from '../table/table.ts';
import type { RowKey } from './correction.ts';
import { plainUnit } from './row-key-text.ts';

/** The key by which a correction names a row of imported readings, whose place may be another the next time. */
export function keyOfRow(imported: Table, row: number): RowKey {
  const texts = ['unit', 'fire', 'state', 'fuel'].map((name) => textsOf(imported, name));
  const taken = numbersOf(imported, 'taken_at');
  const taken_at = writeIsoDate(taken[row]);
  const same = texts.map((column, at) => codesLike(column, textAt(column, row), at === 0));
  let nth = 1;
  for (let other = 0; other < row; other++) {
    if (!texts.every((column, at) => same[at].has(column.codes[other]))) continue;
    if (taken[other] === taken[row] || writeIsoDate(taken[other]) === taken_at) nth++;
  }
  const [unit, fire, state, fuel] = texts.map((column) => textAt(column, row));
  return { unit, taken_at, fire, state, fuel, nth };
}

/** The codes that a correction cannot tell from this text; units agree when they differ in case and dashes only. */
function codesLike({ levels }: TextColumn, text: string, isUnit: boolean): ReadonlySet<number> {
  const plain = isUnit ? plainUnit : (word: string) => word;
  const codes = levels.flatMap((level, code) => (plain(level) === plain(text) ? [code] : []));
  return new Set(text === '' ? [...codes, -1] : codes);
}
