import * as say from '../messages/import.ts';
import type { Question } from '../outcome.ts';
import { writeIsoDate } from '../quantities/dates.ts';
import type { FileRead } from './file-read.ts';
import type { ReadingColumns } from './reading-columns.ts';

export type DateOrder = '' | 'dmy' | 'mdy';

export const DATE_ORDERS = [
  { value: 'dmy', label: 'day first (4/3 is 4 March)' },
  { value: 'mdy', label: 'month first (4/3 is April 3)' },
];

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
  const order = orderShown({ plan, reader }) || answer;
  if (order === 'mdy') takeMonthFirst(columns, openFrom, columns.fileEnd(file));
  if (order !== '' || dates.open + dates.monthFirst === 0) return undefined;
  return question(columns, file, openFrom);
}

/** The order that the file's profile, its dates or its heads tell; '' where none does. */
const orderShown = ({ plan, reader: { dates } }: Pick<FileRead, 'plan' | 'reader'>): DateOrder =>
  plan.dateOrder || shownOrder(dates.dayFirst, dates.monthFirst) || plan.dateOrderTold;

/** Whether nothing but the user's answer says how the dates of a file are read. */
export const readByAnswer = (read: FileRead): boolean =>
  read.reader.openFrom >= 0 && read.reader.dates.open + read.reader.dates.monthFirst > 0 && orderShown(read) === '';

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
  const day = columns.numbers.get('taken_at')!;
  const month = columns.monthFirst.get('taken_at')!;
  const lines = { open: '', dayFirst: '', monthFirst: '' };
  let line = 0;
  for (let row = from; row < columns.fileEnd(file); row++) {
    const [one, other] = [day.get(row), month.get(row)];
    if (one === other || (Number.isNaN(one) && Number.isNaN(other))) continue;
    const kind = Number.isNaN(other) ? 'dayFirst' : Number.isNaN(one) ? 'monthFirst' : 'open';
    if (lines[kind] !== '') continue;
    if (kind === 'open') line = columns.lines[row];
    lines[kind] =
      kind === 'open'
        ? `${writeIsoDate(one)} or ${writeIsoDate(other)}`
        : say.dateOnLine(columns.lines[row], writeIsoDate(kind === 'dayFirst' ? one : other));
  }
  const name = columns.files[file];
  const contradict = lines.dayFirst !== '' && lines.monthFirst !== '';
  return {
    message: contradict
      ? say.twoDateOrders(name, lines.dayFirst, lines.monthFirst)
      : say.askDateOrder(name, String(line), lines.open),
    remedy: say.answerAtCell(DATE_ORDERS.map(({ label }) => label)),
    byCommand: say.dateOrderByCommand(),
    parameter: 'dateOrder',
    options: DATE_ORDERS,
  };
}
