import { civil, clock, isoDay, NumericDate } from './plain-date.ts';
import { ShortYears } from './short-years.ts';

/**
 * Dates and times of day as exports write them, in days since 1970-01-01 (wall clock; a time zone is dropped).
 * Two-digit years by the rule of POSIX strptime %y: 69-99 are 1969-1999, 00-68 are 2000-2068.
 */
const MONTHS: readonly string[][] = [
  ['jan', 'gen', 'ene'],
  ['feb', 'fev'],
  ['mar', 'mrz', 'maa', 'mrt'],
  ['apr', 'avr', 'abr'],
  ['may', 'mai', 'mei', 'mag'],
  ['jun', 'juin', 'giu'],
  ['jul', 'juil', 'lug'],
  ['aug', 'aou', 'ago'],
  ['sep', 'set'],
  ['oct', 'okt', 'ott'],
  ['nov'],
  ['dec', 'dez', 'dic'],
];
const TIME =
  /^(\d{1,2})(?:[:.hu]|\s[hu]\s)(\d{2})(?:[:.m](\d{2})(?:[.,]\d+)?)?\s*(?:([ap])\.?\s?m\.?|uhr|uur|u|hrs?|h|s)?\s*(?:z|utc|[+-]\d{2}:?\d{2})?$/i;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,]\s*(.+))?$/;
const COMPACT = /^((?:19|20)\d{2})(\d{2})(\d{2})(?:[T ]\s*(?:(\d{2})(\d{2})(\d{2})?|(.*[^\d].*)))?$/;
const NUMERIC = /^(?:\p{L}{2,10}\.?,?\s+)?(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{4}|\d{2})(?:[T ,]\s*(.+))?$/u;
const DAY_NAME =
  /^(?:\p{L}{2,10}\.?,?\s+)?(\d{1,2})(?:st|nd|rd|th|er|º|\.)?[\s-]+(?:de\s+)?(\p{L}{3,10})\.?[\s-]+(?:de\s+)?(\d{4}|\d{2})(?:[T ,]\s*(.+))?$/iu;
const NAME_DAY =
  /^(?:\p{L}{2,10}\.?,?\s+)?(\p{L}{3,10})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})(?:[T ,]\s*(.+))?$/iu;
/** Day 0 of the spreadsheets' 1900 calendar, counted so that 1 March 1900 and later come out right. */
const SERIAL_ZERO = 25_569;

/** Reads the date cells of one file and counts what they show of the order of day and month. */
export class DateReader {
  /** Of the last cell: its value if the month stands first; the same as with the day first where that is no question. */
  monthFirstValue = Number.NaN;
  /** Its value if the year stands first; NaN where that is no question. */
  yearFirstValue = Number.NaN;
  /** Cells that are a date only with the day first, only with the month first, and either way. */
  dayFirst = 0;
  monthFirst = 0;
  open = 0;
  readonly short = new ShortYears();
  readonly #plain = new NumericDate();
  #lastText = '';
  #lastDay = Number.NaN;
  #lastMonthFirst = Number.NaN;
  #lastYearFirst = Number.NaN;

  get orderMatters(): boolean {
    return this.dayFirst + this.monthFirst + this.open + this.short.count > 0;
  }

  /** Days of the date, read with the day first where the order is open; NaN where the text is no date. */
  read(text: string): number {
    const day = isoDay(text);
    this.monthFirstValue = day;
    this.yearFirstValue = Number.NaN;
    if (!Number.isNaN(day)) return day;
    const plain = this.#plain;
    if (plain.read(text)) return this.#numeric(plain.first, plain.second, plain.year, plain.time, plain.points, false);
    if (text === this.#lastText) {
      this.monthFirstValue = this.#lastMonthFirst;
      this.yearFirstValue = this.#lastYearFirst;
      return this.#lastDay;
    }
    this.#lastDay = this.#readOther(text.replace(/[\s\u00a0\u202f]+/g, ' ').trim());
    this.#lastText = text;
    this.#lastMonthFirst = this.monthFirstValue;
    this.#lastYearFirst = this.yearFirstValue;
    return this.#lastDay;
  }

  #readOther(text: string): number {
    const numeric = NUMERIC.exec(text);
    if (numeric) {
      const [, first, mark, second, year, time] = numeric;
      return this.#numeric(+first, +second, fullYear(year), timeOfDay(time), mark === '.', year.length === 2);
    }
    this.monthFirstValue = this.#readWritten(text);
    return this.monthFirstValue;
  }

  #readWritten(text: string): number {
    const yearFirst = YEAR_FIRST.exec(text);
    if (yearFirst) return civil(+yearFirst[1], +yearFirst[2], +yearFirst[3]) + timeOfDay(yearFirst[4]);
    const compact = COMPACT.exec(text);
    if (compact) {
      const [, year, month, day, hour = '0', minute = '0', second = '0', time] = compact;
      return civil(+year, +month, +day) + (time ? timeOfDay(time) : clock(+hour, +minute, +second));
    }
    const named = DAY_NAME.exec(text);
    if (named) return civil(fullYear(named[3]), monthOf(named[2]), +named[1]) + timeOfDay(named[4]);
    const american = NAME_DAY.exec(text);
    if (american) return civil(+american[3], monthOf(american[1]), +american[2]) + timeOfDay(american[4]);
    return serialDay(text);
  }

  #numeric(first: number, second: number, year: number, time: number, points: boolean, short: boolean): number {
    const dayFirst = civil(year, second, first) + time;
    if (short) this.#short(first, second, year, time, points ? dayFirst : undefined);
    else this.short.others++;
    // A date with points has the day first wherever it is written so.
    this.monthFirstValue = dayFirst;
    if (points) return dayFirst;
    const monthFirst = civil(year, first, second) + time;
    if (Number.isNaN(dayFirst) && Number.isNaN(monthFirst)) return Number.NaN;
    this.monthFirstValue = monthFirst;
    if (Number.isNaN(monthFirst)) this.dayFirst++;
    else if (Number.isNaN(dayFirst)) this.monthFirst++;
    else if (dayFirst !== monthFirst) this.open++;
    return dayFirst;
  }

  /** Keeps what the date is with the year first, and what it shows of that. */
  #short(first: number, second: number, year: number, time: number, dotted?: number): void {
    const usual = dotted ?? this.#usual(first, second, year, time);
    const last = year % 100;
    this.yearFirstValue = civil(fullYear(String(first).padStart(2, '0')), second, last) + time;
    this.short.see(first, last, usual, this.yearFirstValue, dotted !== undefined);
  }

  #usual(first: number, second: number, year: number, time: number): number {
    const dayFirst = civil(year, second, first) + time;
    return Number.isNaN(dayFirst) ? civil(year, first, second) + time : dayFirst;
  }
}

/** The day 0 that spreadsheets write before a time of day alone. */
const SERIAL_DATE = /^(?:1899-12-3[01]|1900-01-0[01]|30[./]12[./]1899|12\/30\/1899)[T ]\s*/;

/** Share of a day of a clock time with 24 or 12 hours ('14:05', '2:05:30 PM'); 0 for none, NaN for what is no time. */
export function timeOfDay(text: string | undefined): number {
  if (text === undefined || text.trim() === '') return 0;
  const written = text.trim().replace(SERIAL_DATE, '');
  const match = TIME.exec(written);
  if (!match) {
    const serial = Number(written.replace(',', '.'));
    return serial > 0 && serial < 1 ? Math.round(serial * 86_400) / 86_400 : Number.NaN;
  }
  const [, hour, minute, second = '0', half] = match;
  if (half === undefined) return clock(+hour, +minute, +second);
  if (+hour < 1 || +hour > 12) return Number.NaN;
  return clock((+hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0), +minute, +second);
}

function fullYear(text: string): number {
  return text.length === 4 ? +text : +text + (+text < 69 ? 2000 : 1900);
}

function monthOf(name: string): number {
  const plain = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  // 'juin' and 'juillet' part at the fourth letter only, 'mai', 'mar' and 'mag' at the third.
  return MONTHS.findIndex((names) => names.some((start) => plain.startsWith(start))) + 1 || Number.NaN;
}

/** Spreadsheet day numbers of about 1955 to 2119; the share of a day is rounded to seconds. */
function serialDay(text: string): number {
  if (!/^[2-7]\d{4}(?:[.,]\d+)?$/.test(text)) return Number.NaN;
  return Math.round((Number(text.replace(',', '.')) - SERIAL_ZERO) * 86_400) / 86_400;
}
