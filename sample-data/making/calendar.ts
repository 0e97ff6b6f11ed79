/** Days since 1970-01-01 to and from the ways in which the exports write them. All dates are civil dates, without a zone. */
export const calendar = {
  day: (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000,
  iso: (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10),
  year: (day: number): number => new Date(day * 86_400_000).getUTCFullYear(),
  /** 24-hour clock, `09:40`. */
  clock: (minute: number): string =>
    `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`,
  /** 12-hour clock, `2:40 PM`. */
  halfDayClock: (minute: number): string =>
    `${((Math.floor(minute / 60) + 11) % 12) + 1}:${String(minute % 60).padStart(2, '0')} ${minute < 720 ? 'AM' : 'PM'}`,
  /** `09.11.2024` */
  dayMonthYear: (day: number): string => calendar.iso(day).split('-').reverse().join('.'),
  /** `11/9/2024` */
  monthDayYear: (day: number): string => {
    const [year, month, date] = calendar.iso(day).split('-').map(Number);
    return `${month}/${date}/${year}`;
  },
} as const;
