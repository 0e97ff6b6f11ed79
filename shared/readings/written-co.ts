import * as say from '../messages/import.ts';
import { HIGH_CO_PPM } from './high-co.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { NumberReader, READ } from './read-number.ts';

/** Two rows run together at most. */
const MOST_SHIFTED = 60;

const coColumns = ({ columns }: FilePlan): readonly ColumnMapping[] =>
  columns.filter(({ field }) => field === 'co_ppm' || field === 'co_air_free_ppm');

/**
 * The CO of a record as it is written, where that is high or over range; else ''. In a record that has fields too many or
 * too few it may stand at other places, which are looked at too.
 */
export function highCoWritten(record: readonly string[], plan: FilePlan): string {
  const shift = plan.blocks ? 0 : record.length - plan.heads.length;
  for (const { index, unit } of coColumns(plan)) {
    const reader = new NumberReader(plan.decimal, unit);
    for (let off = 0; off <= Math.min(Math.abs(shift), MOST_SHIFTED); off++) {
      const text = record[index + Math.sign(shift) * off] ?? '';
      const value = reader.read(text);
      // Out of its place a word such as "high" is that of another column.
      const isOver = reader.status === READ.overRange && (shift === 0 || !/\p{L}/u.test(text));
      const isHigh = isOver || (reader.status === READ.number && value >= HIGH_CO_PPM);
      if (isHigh) return shift === 0 ? text.trim() : say.atItsPlace(text.trim());
    }
  }
  return '';
}

/** Places of records whose CO is dashes. */
export function* dashedCo(records: readonly (readonly string[])[], plan: FilePlan): Generator<number> {
  for (const { index } of coColumns(plan))
    for (let i = 0; i < records.length; i++)
      if (records[i][index].charCodeAt(0) === 45 && /^-{2,}\s*$/.test(records[i][index])) yield i;
}
