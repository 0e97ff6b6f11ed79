/** Calendar arithmetic on days since 1970-01-01 (proleptic Gregorian, wall clock, no time zone). */
const MS_PER_DAY = 86_400_000;
const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?(?:Z|[+-]\d{2}:?\d{2})?)?$/;

/** Days of a calendar date and time; NaN where no such date exists (31 April). */
export function dayOf(year: number, month: number, day: number, hour = 0, minute = 0, second = 0): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  if (date.getUTCFullYear() !== year || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day)
    return Number.NaN;
  if (hour > 23 || minute > 59 || second > 59) return Number.NaN;
  return Math.round(date.getTime() / MS_PER_DAY) + (hour * 3600 + minute * 60 + second) / 86_400;
}

/** Days of an ISO 8601 date or date-time, NaN where the text is none. An offset is dropped: the wall clock counts. */
export function readIsoDate(text: string): number {
  const match = ISO.exec(text.trim());
  if (!match) return Number.NaN;
  const [, year, month, day, hour = '0', minute = '0', second = '0'] = match;
  return dayOf(+year, +month, +day, +hour, +minute, +second);
}

/** ISO 8601: a date, with the time of day where it is not midnight; '' for NaN. */
export function writeIsoDate(days: number): string {
  if (!Number.isFinite(days)) return '';
  const iso = new Date(Math.round(days * 86_400) * 1000).toISOString();
  if (iso.endsWith('T00:00:00.000Z')) return iso.slice(0, 10);
  return iso.endsWith(':00.000Z') ? iso.slice(0, 16) : iso.slice(0, 19);
}

/** The date alone, '' for NaN. */
export function writeDay(days: number): string {
  return Number.isFinite(days) ? new Date(Math.floor(days) * MS_PER_DAY).toISOString().slice(0, 10) : '';
}

/** A mean tropical-calendar year in days, for rates per year. */
export const DAYS_PER_YEAR = 365.25;
