import type { DateOrder } from './date-order.ts';

/** A date as it is to be written, in the letters of these languages: day, Tag, jour, giorno, dag, dia; month; year, Jahr, année, año. */
const FORM = /\b(?:([dtjg]{1,4})[\s./-]+(m{1,4})|(m{1,4})[\s./-]+([dtjg]{1,4}))[\s./-]+[yja]{2,4}\b/i;

/** The same with the year first. */
const YEAR_FORM = /\b[yja]{2,4}[\s./-]+m{1,4}[\s./-]+[dtjg]{1,4}\b/i;

/** The order of day and month that a head or the line below it states, such as "Date (dd/mm/yyyy)"; '' where none does. */
export function orderInHead(...texts: readonly string[]): DateOrder {
  if (texts.some((text) => YEAR_FORM.test(text))) return 'ymd';
  const found = texts.map((text) => FORM.exec(text)).find((match) => match !== null);
  return found ? (found[1] === undefined ? 'mdy' : 'dmy') : '';
}

/** A head without the form of its dates. */
export const withoutDateForm = (head: string): string => head.replace(FORM, ' ').replace(YEAR_FORM, ' ');
