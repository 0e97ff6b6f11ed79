/**
 * Dates in plain digits, read a character at a time since a million of them come in a file: ISO, and numbers in the order
 * of a country. Whatever is written otherwise is for the patterns of read-date.ts.
 */

const SPACE = 32;
const DASH = 45;
const POINT = 46;
const SLASH = 47;
const COLON = 58;
const T = 84;
/** Makes no year, month, day, hour or minute, whatever is added to it. */
const NO_NUMBER = 1_000_000;
const LAST_YEAR = 9999;

/** YYYY-MM-DD with or without THH:MM[:SS]. */
export function isoDay(text: string): number {
  const { length } = text;
  if (length < 10 || text.charCodeAt(4) !== DASH || text.charCodeAt(7) !== DASH) return Number.NaN;
  const day = civil(100 * two(text, 0) + two(text, 2), two(text, 5), two(text, 8));
  if (length === 10) return day;
  const mark = text.charCodeAt(10);
  if ((mark !== T && mark !== SPACE) || text.charCodeAt(13) !== COLON || (length !== 16 && length !== 19))
    return Number.NaN;
  if (length === 19 && text.charCodeAt(16) !== COLON) return Number.NaN;
  return day + clock(two(text, 11), two(text, 14), length === 19 ? two(text, 17) : 0);
}

/** Two digits; NO_NUMBER where they are none, since a NaN would make every sum a slow one. NaN behind the text's end. */
function two(text: string, at: number): number {
  const tens = text.charCodeAt(at) - 48;
  const ones = text.charCodeAt(at + 1) - 48;
  return (tens | (9 - tens) | ones | (9 - ones)) < 0 ? NO_NUMBER : 10 * tens + ones;
}

export function clock(hour: number, minute: number, second: number): number {
  if (!(hour < 24 && minute < 60 && second < 60)) return Number.NaN;
  return (hour * 3600 + minute * 60 + second) / 86_400;
}

const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/** Days of a Gregorian date from 1583 to 9999; NaN where no such day exists. */
export function civil(year: number, month: number, day: number): number {
  if (!(year >= 1583 && year <= LAST_YEAR && month >= 1 && month <= 12 && day >= 1 && day <= 31)) return Number.NaN;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 1 : 0;
  const length = month === 2 ? 28 + leap : month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  if (day > length) return Number.NaN;
  const before = year - 1;
  const leaps = Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
  // 719162 days lie between 0001-01-01 and 1970-01-01.
  return 365 * before + leaps - 719_162 + DAYS_BEFORE[month - 1] + (month > 2 ? leap : 0) + day - 1;
}

/** A date like 13.03.2024, 3/13/2024 or 13-03-2024 with or without a space and H:MM[:SS]. */
export class NumericDate {
  first = 0;
  second = 0;
  /** Four digits. */
  year = 0;
  /** Share of the day; 0 where none is written. */
  time = 0;
  /** Whether its marks are points. */
  points = false;
  /** Where the next character stands. */
  #at = 0;

  /** Whether the text is one, character for character. The numbers may still be no date. */
  read(text: string): boolean {
    if (text.length < 8 || text.length > 19) return false;
    this.#at = 0;
    this.first = this.#number(text);
    const mark = text.charCodeAt(this.#at++);
    if (mark !== POINT && mark !== SLASH && mark !== DASH) return false;
    this.second = this.#number(text);
    if (text.charCodeAt(this.#at++) !== mark) return false;
    this.year = 100 * two(text, this.#at) + two(text, this.#at + 2);
    this.#at += 4;
    this.points = mark === POINT;
    this.time = this.#at === text.length ? 0 : this.#clock(text);
    return this.year <= LAST_YEAR && !Number.isNaN(this.first + this.second + this.year + this.time);
  }

  /** NaN where the rest is no time on a clock of 24 hours. */
  #clock(text: string): number {
    if (text.charCodeAt(this.#at++) !== SPACE) return Number.NaN;
    const hour = this.#number(text);
    const minute = this.#afterColon(text);
    const second = this.#at === text.length ? 0 : this.#afterColon(text);
    return this.#at === text.length ? clock(hour, minute, second) : Number.NaN;
  }

  #afterColon(text: string): number {
    if (text.charCodeAt(this.#at) !== COLON) return Number.NaN;
    const value = two(text, this.#at + 1);
    this.#at += 3;
    return value;
  }

  /** One digit or two. */
  #number(text: string): number {
    const tens = text.charCodeAt(this.#at++) - 48;
    if (!(tens >= 0 && tens <= 9)) return Number.NaN;
    const ones = text.charCodeAt(this.#at) - 48;
    if (!(ones >= 0 && ones <= 9)) return tens;
    this.#at++;
    return 10 * tens + ones;
  }
}
