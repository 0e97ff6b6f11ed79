import * as say from '../messages/import.ts';
import type { Question } from '../outcome.ts';
import { writeDay, writeIsoDate } from '../quantities/dates.ts';
import { type DateOrder, orderOptions } from './date-order.ts';
import type { FileRead } from './file-read.ts';
import type { GrowingNumbers } from './growing-columns.ts';
import type { DateReader } from './read-date.ts';
import type { ReadingColumns } from './reading-columns.ts';

/**
 * Settles whether day, month or year stands first in one file's dates: its profile says so, or a date that exists one way
 * only does, or the user did. Writes the dates accordingly; returns a question where nothing settles it.
 */
export function settleDates(
  columns: ReadingColumns,
  file: number,
  { plan, reader }: FileRead,
  answer: DateOrder,
  asOf: number,
): Question | undefined {
  const { dates, openFrom } = reader;
  if (openFrom < 0) return undefined;
  const order = orderShown(plan, dates, asOf) || answerFor(dates, answer, asOf);
  const end = columns.fileEnd(file);
  if (order === 'mdy') takeOther(columns.numbers, columns.monthFirst, openFrom, end, true);
  if (order === 'ymd') takeOther(columns.numbers, columns.yearFirst, openFrom, end, false);
  if (order !== '' || !isOpen(dates, asOf)) return undefined;
  return dates.short.pointFirst(asOf) ? yearQuestion(columns, file, openFrom) : question(columns, file, reader, asOf);
}

/** Whether a file's dates alone leave the order open. */
const isOpen = (dates: DateReader, asOf: number): boolean =>
  dates.open + dates.monthFirst > 0 || dates.short.pointFirst(asOf);

/** The order that the file's profile, its dates or its heads tell; '' where none does. */
export function orderShown(
  { dateOrder, dateOrderTold: told }: { readonly dateOrder: DateOrder; readonly dateOrderTold: DateOrder },
  dates: DateReader,
  asOf: number,
): DateOrder {
  const { short } = dates;
  const canHaveYear = short.canStandFirst(asOf);
  if (dateOrder !== '' && (dateOrder !== 'ymd' || short.count > short.others)) return dateOrder;
  if (short.mustStandFirst(asOf) || (told === 'ymd' && canHaveYear)) return 'ymd';
  const year = short.pointFirst(asOf);
  const shown = year && told === '' ? '' : shownOrder(dates.dayFirst, dates.monthFirst);
  return shown || (told === 'ymd' ? '' : told);
}

/** The user's answer, where it can be one for this file: years in front only where they can stand there. */
export function answerFor({ short }: DateReader, answer: DateOrder, asOf: number): DateOrder {
  if (answer !== 'ymd') return answer;
  return short.pointFirst(asOf) || (short.canStandFirst(asOf) && !short.pointLast) ? 'ymd' : '';
}

/** Whether nothing but the user's answer says how the dates of a file are read. */
export const readByAnswer = ({ plan, reader: { dates, openFrom } }: FileRead, asOf: number): boolean =>
  openFrom >= 0 && isOpen(dates, asOf) && orderShown(plan, dates, asOf) === '';

/** The order that dates with a number over 12 show, where they agree. */
function shownOrder(dayFirst: number, monthFirst: number): DateOrder {
  if (dayFirst > 0 && monthFirst === 0) return 'dmy';
  return monthFirst > 0 && dayFirst === 0 ? 'mdy' : '';
}

/** `whole`: the other column has every date from there on, else only those whose order is in question. */
function takeOther(
  into: ReadonlyMap<string, GrowingNumbers>,
  from: ReadonlyMap<string, GrowingNumbers>,
  start: number,
  end: number,
  whole: boolean,
): void {
  for (const [field, other] of from) {
    const kept = into.get(field);
    if (!kept || other.values.length === 0 || kept.values.length === 0) continue;
    for (let row = start; row < end; row++) {
      const day = other.get(row);
      if (whole || !Number.isNaN(day)) kept.values[row] = day;
    }
  }
}

function question(columns: ReadingColumns, file: number, reader: FileRead['reader'], asOf: number): Question {
  const day = columns.numbers.get('taken_at')!;
  const month = columns.monthFirst.get('taken_at')!;
  const lines = { open: '', dayFirst: '', monthFirst: '' };
  let line = 0;
  for (let row = reader.openFrom; row < columns.fileEnd(file); row++) {
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
  const message = contradict
    ? say.twoDateOrders(name, lines.dayFirst, lines.monthFirst)
    : say.askDateOrder(name, String(line), lines.open);
  return asked(message, reader.dates.short.canStandFirst(asOf));
}

/** Where what speaks for the year in front stands beside another order. */
function yearQuestion(columns: ReadingColumns, file: number, from: number): Question {
  const taken = columns.numbers.get('taken_at')!;
  const month = columns.monthFirst.get('taken_at')!;
  const year = columns.yearFirst.get('taken_at')!;
  let row = from;
  while (row < columns.fileEnd(file) - 1 && Number.isNaN(year.get(row))) row++;
  const days = [...new Set([taken.get(row), month.get(row), year.get(row)])].filter((day) => !Number.isNaN(day));
  const example = say.dateOr(days.map((day) => writeDay(Math.floor(day))));
  return asked(say.askYearFirst(columns.files[file], String(columns.lines[row]), example), true);
}

const asked = (message: string, yearFirst: boolean): Question => {
  const options = orderOptions(yearFirst);
  return {
    message,
    remedy: say.answerAtCell(options.map(({ label }) => label)),
    byCommand: say.dateOrderByCommand(yearFirst),
    parameter: 'dateOrder',
    options,
  };
};
