import { HIGH_CO_PPM } from './high-co.ts';
import type { ColumnMapping, FilePlan } from './mapping.ts';
import { NumberReader, READ } from './read-number.ts';

const coColumns = ({ columns }: FilePlan): readonly ColumnMapping[] =>
  columns.filter(({ field }) => field === 'co_ppm' || field === 'co_air_free_ppm');

/** The CO of a record as it is written, where that is high or over range; else ''. */
export function highCoWritten(record: readonly string[], plan: FilePlan): string {
  for (const { index, unit } of coColumns(plan)) {
    const reader = new NumberReader(plan.decimal, unit);
    const text = record[index] ?? '';
    const value = reader.read(text);
    if (reader.status === READ.overRange || (reader.status === READ.number && value >= HIGH_CO_PPM)) return text.trim();
  }
  return '';
}

/** Places of records whose CO is dashes. */
export function* dashedCo(records: readonly (readonly string[])[], plan: FilePlan): Generator<number> {
  for (const { index } of coColumns(plan))
    for (let i = 0; i < records.length; i++)
      if (records[i][index].charCodeAt(0) === 45 && /^-{2,}\s*$/.test(records[i][index])) yield i;
}
