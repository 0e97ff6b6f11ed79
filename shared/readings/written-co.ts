import * as say from '../messages/import.ts';
import { READING_FIELDS } from './fields.ts';
import { HIGH_CO_PPM } from './high-co.ts';
import { type ColumnMapping, type FilePlan, HEAD_NOT_UNDERSTOOD } from './mapping.ts';
import { NumberReader, READ } from './read-number.ts';

/** Two rows run together at most. */
const MOST_SHIFTED = 60;

/** 'co' where the part is not read, so that nobody was asked whether it is raw or air-free. */
const CO_FIELDS = new Set(['co_ppm', 'co_air_free_ppm', 'co']);
/** Gases other than CO that analyzers show in ppm. */
const OTHER_GAS = /\b(?:no|no2|nox|so2|h2|h2s|ch4|nh3|hc|cxhy|co2|o2|c3h8)\b/i;
const NUMBERS = new Set(READING_FIELDS.filter(({ kind }) => kind === 'number').map(({ name }) => name));

const coColumns = ({ columns }: FilePlan): readonly ColumnMapping[] =>
  columns.filter(({ field }) => CO_FIELDS.has(field));

/** Columns in ppm whose heads were not understood and name no other gas: one of them may be CO. */
export const maybeCoColumns = ({ columns }: FilePlan): readonly ColumnMapping[] =>
  columns.filter(
    ({ field, head, reason }) =>
      field === '' && reason === HEAD_NOT_UNDERSTOOD && /\bppm/i.test(head) && !OTHER_GAS.test(head),
  );

/**
 * The CO of a record that is not read, as it is written, where that is high or over range; else ''. In a record that has
 * fields too many or too few it may stand at other places, which are looked at too; so it may where heads were not understood.
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
      const isHigh =
        isOver || (reader.status === READ.number && value >= HIGH_CO_PPM) || (shift === 0 && hasHigh(reader, text));
      if (isHigh) return shift === 0 ? text.trim() : say.atItsPlace(text.trim());
    }
  }
  const maybe = maybeCo(record, plan);
  return maybe === '' ? '' : say.ifCo(maybe);
}

/** A number within a text that is none by itself: "ca. 1200", "1200*". */
function hasHigh(reader: NumberReader, text: string): boolean {
  if (reader.status !== READ.wrong) return false;
  return [...text.matchAll(/\d[\d.,'\u00a0\u202f ]*/g)].some(([digits]) => reader.read(digits.trim()) >= HIGH_CO_PPM);
}

/** A value that would be a high CO: one of a column in ppm that was not understood, or a mark such as ">4000" where no number belongs. */
function maybeCo(record: readonly string[], plan: FilePlan): string {
  const reader = new NumberReader(plan.decimal);
  const inPpm = new Set(maybeCoColumns(plan).map(({ index }) => index));
  const found = plan.columns.find(({ field, index }) => {
    if (NUMBERS.has(field) || CO_FIELDS.has(field)) return false;
    const value = reader.read(record[index] ?? '');
    const isOver = inPpm.has(index) && reader.status === READ.overRange;
    return isOver || (value >= HIGH_CO_PPM && (inPpm.has(index) || reader.bound > 0));
  });
  return found ? (record[found.index] ?? '').trim() : '';
}

/** Places of records whose CO is dashes. */
export function* dashedCo(records: readonly (readonly string[])[], plan: FilePlan): Generator<number> {
  for (const { index } of coColumns(plan))
    for (let i = 0; i < records.length; i++)
      if (records[i][index].charCodeAt(0) === 45 && /^-{2,}\s*$/.test(records[i][index])) yield i;
}
