import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayOf, writeIsoDate } from '../../../shared/quantities/dates.ts';
import { DateReader, timeOfDay } from '../../../shared/readings/read-date.ts';

const read = (text: string): string => writeIsoDate(new DateReader().read(text));

describe('dates that say themselves what they are', () => {
  test.each([
    ['2024-03-12', '2024-03-12'],
    ['2024-03-12T10:15', '2024-03-12T10:15'],
    ['2024-03-12 10:15:30', '2024-03-12T10:15:30'],
    ['2024-03-12T10:15:00Z', '2024-03-12T10:15'],
    ['2024-03-12T10:15:00+02:00', '2024-03-12T10:15'],
    ['2024/3/12', '2024-03-12'],
    ['20240312', '2024-03-12'],
    ['20240312T101500', '2024-03-12T10:15'],
    ['12.03.2024', '2024-03-12'],
    ['12.3.24', '2024-03-12'],
    ['12.03.2024 10:15', '2024-03-12T10:15'],
    ['12. März 2024', '2024-03-12'],
    ['12 Mar 2024', '2024-03-12'],
    ['20240312 10:15', '2024-03-12T10:15'],
    ['20240312 1:05 PM', '2024-03-12T13:05'],
    ['20240312T101530', '2024-03-12T10:15:30'],
    ['March 12, 2024', '2024-03-12'],
    ['12 mars 2024', '2024-03-12'],
    ['12 de marzo de 2024', '2024-03-12'],
    ['12 maart 2024', '2024-03-12'],
    ['1 juillet 2024', '2024-07-01'],
    ['1 juin 2024', '2024-06-01'],
    ['Tue, 12 Mar 2024', '2024-03-12'],
    ['12-Mar-2024', '2024-03-12'],
    ['31/12/1999', '1999-12-31'],
    ['29/02/24 9:05 PM', '2024-02-29T21:05'],
  ])('%s', (text, iso) => expect(read(text)).toBe(iso));

  // Spreadsheet day 45363 is 12 March 2024; 2 January 1900 is day 2 there, 1 March 1900 day 61 (known: memory).
  test('spreadsheet day numbers', () => {
    expect(read('45363')).toBe('2024-03-12');
    expect(read('45363.4270833333')).toBe('2024-03-12T10:15');
    expect(read('45363,75')).toBe('2024-03-12T18:00');
  });

  test.each([
    '',
    '31.04.2024',
    '2024-02-30',
    '29.02.2023',
    '2024-13-01',
    '12.03.2024 25:00',
    'soon',
    '4.6',
    '123',
    '13/13/2024',
    '2024-03-12T10:60',
  ])('"%s" is none', (text) => expect(new DateReader().read(text)).toBeNaN());
});

describe('order of day and month', () => {
  const evidence = (...texts: string[]): [number, number, number] => {
    const reader = new DateReader();
    for (const text of texts) reader.read(text);
    return [reader.dayFirst, reader.monthFirst, reader.open];
  };
  test('a number over 12 settles it, equal numbers say nothing, points put the day first', () => {
    expect(evidence('13/02/2024')).toEqual([1, 0, 0]);
    expect(evidence('02/13/2024')).toEqual([0, 1, 0]);
    expect(evidence('04/03/2024')).toEqual([0, 0, 1]);
    expect(evidence('05/05/2024')).toEqual([0, 0, 0]);
    expect(evidence('04.03.2024', '2024-03-04')).toEqual([0, 0, 0]);
  });
  test('both readings are kept', () => {
    const reader = new DateReader();
    expect(writeIsoDate(reader.read('04/03/2024 1:30 pm'))).toBe('2024-03-04T13:30');
    expect(writeIsoDate(reader.monthFirstValue)).toBe('2024-04-03T13:30');
  });
});

test('12-hour clocks: 12 AM is midnight, 12 PM noon', () => {
  expect(timeOfDay('12:00 AM')).toBe(0);
  expect(timeOfDay('12:00 pm')).toBe(0.5);
  expect(timeOfDay('9:14 a.m.')).toBeCloseTo((9 + 14 / 60) / 24, 12);
  expect(timeOfDay('13:00 PM')).toBeNaN();
  expect(timeOfDay('09h14')).toBeCloseTo((9 + 14 / 60) / 24, 12);
  expect(timeOfDay('0.5')).toBe(0.5);
});

test('every day of four centuries reads as the calendar has it', () => {
  fc.assert(
    fc.property(fc.date({ min: new Date('1600-01-01'), max: new Date('2399-12-31'), noInvalidDate: true }), (date) => {
      const [year, month, day] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
      const two = (n: number): string => String(n).padStart(2, '0');
      const expected = dayOf(year, month, day);
      const reader = new DateReader();
      expect(reader.read(`${year}-${two(month)}-${two(day)}`)).toBe(expected);
      expect(reader.read(`${two(day)}.${two(month)}.${year}`)).toBe(expected);
      reader.read(`${month}/${day}/${year}`);
      expect(reader.monthFirstValue).toBe(expected);
    }),
  );
});
