import * as say from '../messages/import.ts';
import type { FilePlan } from './mapping.ts';

/**
 * Why a record does not have the fields of the table's head line; '' where it does. A field too many shifts all after it,
 * even where the last one is empty, so only what every row of the file has is let pass; a field too few likewise, except
 * in a file that leaves empty fields at the end of its rows out.
 */
export function wrongLength(record: readonly string[], { heads, rowFields, rowsMayEnd }: FilePlan): string {
  if (record.length === heads.length) return '';
  const needed = heads.findLastIndex((head) => head.trim() !== '') + 1;
  // A value under no head belongs under another one.
  const isShifted = (heads[record.length - 1] ?? '').trim() === '' && (record.at(-1) ?? '').trim() !== '';
  if (record.length < needed)
    return rowsMayEnd && record.length > 2 && !isShifted ? '' : say.fewFields(record.length, needed);
  if (record.length < heads.length) return '';
  const usual = record.length === rowFields && record.slice(heads.length).every((cell) => cell.trim() === '');
  return usual ? '' : say.manyFields(record.length, needed);
}

/** The record with empty fields at its end up to the length of the head line. */
export function padded(record: readonly string[], { heads }: FilePlan): readonly string[] {
  return record.length >= heads.length ? record : [...record, ...Array(heads.length - record.length).fill('')];
}
