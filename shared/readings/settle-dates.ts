import * as say from '../messages/import.ts';
import type { Question } from '../outcome.ts';
import { writeIsoDate } from '../quantities/dates.ts';
import type { FileRead } from './read-file.ts';
import type { ReadingColumns } from './reading-columns.ts';

export type DateOrder = '' | 'dmy' | 'mdy';

/**
 * Settles whether day or month stands first in one file's dates: its profile says so, or a date that exists one way only
 * does, or the user did. Writes the dates accordingly; returns a question where nothing settles it.
 */
export function settleDates(
  columns: ReadingColumns,
  file: number,
  { plan, reader }: FileRead,
  answer: DateOrder,
): Question | undefined {
  const { dates, openFrom } = reader;
  if (openFrom < 0) return undefined;
  const order = plan.dateOrder || shownOrder(dates.dayFirst, dates.monthFirst) || answer;
  if (order === 'mdy') takeMonthFirst(columns, openFrom, columns.fileEnd(file));
  if (order !== '' || dates.open + dates.monthFirst === 0) return undefined;
  return question(columns, file, openFrom);
}

/** The order that dates with a number over 12 show, where they agree. */
function shownOrder(dayFirst: number, monthFirst: number): DateOrder {
  if (dayFirst > 0 && monthFirst === 0) return 'dmy';
  return monthFirst > 0 && dayFirst === 0 ? 'mdy' : '';
}

function takeMonthFirst(columns: ReadingColumns, from: number, to: number): void {
  for (const [field, other] of columns.monthFirst) {
    const kept = columns.numbers.get(field);
    if (!kept || other.values.length === 0 || kept.values.length === 0) continue;
    for (let row = from; row < to; row++) kept.values[row] = other.get(row);
  }
}

function question(columns: ReadingColumns, file: number, from: number): Question {
  const day = columns.numbers.get('taken_at');
  const month = columns.monthFirst.get('taken_at');
  let row = from;
  const last = columns.fileEnd(file) - 1;
  while (day && month && row < last && day.get(row) === month.get(row)) row++;
  const both = `${writeIsoDate(day?.get(row) ?? Number.NaN)} or ${writeIsoDate(month?.get(row) ?? Number.NaN)}`;
  return {
    message: say.askDateOrder(columns.files[file], String(columns.lines[row]), both),
    remedy: say.answerDateOrder(),
    parameter: 'dateOrder',
    options: [
      { value: 'dmy', label: 'day first (4/3 is 4 March)' },
      { value: 'mdy', label: 'month first (4/3 is April 3)' },
    ],
  };
}
