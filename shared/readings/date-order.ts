/** What stands first in dates such as 3/4/22; '' where it is not known. */
export type DateOrder = '' | 'dmy' | 'mdy' | 'ymd';

/** The orders as files, profiles and options write them. */
export const DATE_ORDER_NAMES = ['dmy', 'mdy', 'ymd'] as const;

export const isDateOrder = (raw: unknown): raw is DateOrder =>
  raw === '' || raw === 'dmy' || raw === 'mdy' || raw === 'ymd';

export const DATE_ORDERS = [
  { value: 'dmy', label: 'day first (4/3 is 4 March)' },
  { value: 'mdy', label: 'month first (4/3 is April 3)' },
];
const YEAR_FIRST = { value: 'ymd', label: 'year first (22/03/04 is 4 March 2022)' };

/** What can be answered: the year is named only where every date of the file can have it first. */
export const orderOptions = (yearFirst: boolean): typeof DATE_ORDERS =>
  yearFirst ? [...DATE_ORDERS, YEAR_FIRST] : DATE_ORDERS;
