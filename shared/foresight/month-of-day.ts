const MS_PER_DAY = 86_400_000;

const MONTHS = new Map<number, number>();

/** Months since January 1970 of a day since 1970-01-01. */
export function monthOfDay(day: number): number {
  const whole = Math.floor(day);
  let month = MONTHS.get(whole);
  if (month === undefined) {
    const date = new Date(whole * MS_PER_DAY);
    month = (date.getUTCFullYear() - 1970) * 12 + date.getUTCMonth();
    MONTHS.set(whole, month);
  }
  return month;
}
