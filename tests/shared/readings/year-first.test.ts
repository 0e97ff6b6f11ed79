import { describe, expect, test } from 'vitest';
import { EVENT_VOCABULARY } from '../../../shared/readings/event-vocabulary.ts';
import { readTable } from '../../../shared/readings/read-table.ts';
import { contextOf, fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const fileWith = (dates: readonly string[], head = 'Date'): string =>
  `Unit,${head},Fire,State,O2 [%],CO ppm raw\n${dates.map((date, i) => `B-${i},${date},high,as found,4.${i % 10},12`).join('\n')}\n`;
const daysOf = async (dates: readonly string[], parameters = {}, head?: string): Promise<string[]> =>
  rowsOf((await accepted(fileWith(dates, head), parameters)).tables['accepted']).map(({ taken_at }) =>
    (taken_at ?? '').slice(0, 10),
  );
const asked = async (dates: readonly string[], parameters = {}, head?: string) => {
  const outcome = await readReadings([fileOf('export.csv', fileWith(dates, head))], parameters);
  return outcome.status === 'question' ? outcome.question : undefined;
};

// 4 March and 17 May 2022, 9 March 2023: two years, three days.
const YEAR_FIRST = ['22/03/04', '22/05/17', '23/03/09'];

describe('dates with years of two digits', () => {
  test.each([
    ['fewer years than days', YEAR_FIRST],
    ['a reading of a single day that would be 22 years old with the day first', ['22/03/04']],
    // 14 March of three years, or three days of March 2014.
    ['the same day of every year', ['14/03/21', '14/03/22', '14/03/23']],
    ['a single day', ['15-03-24']],
    ['with dashes and a time', ['22-03-04 10:15', '22-05-17 10:20', '23-03-09 9:00']],
    ['with points', ['22.03.04', '22.05.17', '23.03.09']],
    ['days to come, were the day first', ['22/03/29', '21/03/30']],
  ])('that may have the year first are asked about: %s', async (_, dates) => {
    const question = await asked(dates);
    expect(question?.message).toMatch(
      /^export\.csv: its dates with years of two digits may have the year first: line 2/,
    );
    expect(question?.options.map(({ value }) => value)).toEqual(['dmy', 'mdy', 'ymd']);
    expect(question?.byCommand).toContain('--date-order ymd');
  });

  test('the answer reads them so, and a profile does', async () => {
    const days = ['2022-03-04', '2022-05-17', '2023-03-09'];
    expect(await daysOf(YEAR_FIRST, { dateOrder: 'ymd' })).toEqual(days);
    expect(await daysOf(YEAR_FIRST, { profiles: [{ name: 'own', dateOrder: 'ymd' }] })).toEqual(days);
    expect(await daysOf(YEAR_FIRST, { dateOrder: 'dmy' })).toEqual(['2004-03-22', '2017-05-22', '2009-03-23']);
  });

  test('a head that writes them year first, or one that is a date only so, settles it', async () => {
    expect(await daysOf(YEAR_FIRST, {}, 'Date (yy/mm/dd)')).toEqual(['2022-03-04', '2022-05-17', '2023-03-09']);
    // 98 is no day and no month; by POSIX %y it is 1998.
    expect(await daysOf(['98/03/04', '02/05/17'])).toEqual(['1998-03-04', '2002-05-17']);
  });

  test.each([
    ['days of all sorts', ['15/03/21', '28/09/21', '14/03/22', '30/09/22'], '2021-03-15'],
    ['many days of two years', ['14/03/21', '16/05/21', '19/09/21', '23/04/22', '25/09/22', '26/10/22'], '2021-03-14'],
    ['days that would be older than anybody looks back for', ['07/13/24', '08/14/24'], '2024-07-13'],
    ['a single day with points', ['15.03.24'], '2024-03-15'],
    ['the month first', ['03/15/21', '09/28/21', '03/14/22'], '2021-03-15'],
    ['points', ['15.03.21', '02.09.21', '14.03.22'], '2021-03-15'],
  ])('with the day or the month first are not asked about: %s', async (_, dates, first) => {
    expect((await daysOf(dates))[0]).toBe(first);
  });

  test('years of four digits are never in question, whatever was answered', async () => {
    expect(await daysOf(['15/03/2022', '16/03/2022'], { dateOrder: 'ymd' })).toEqual(['2022-03-15', '2022-03-16']);
  });

  test('in a small table they are asked about as well', async () => {
    const file = fileOf(
      'events.csv',
      'unit,on,event\nB-1,22/03/04,cleaned\nB-1,22/05/17,cleaned\nB-2,23/03/09,cleaned\n',
    );
    const read = (dateOrder: '' | 'ymd') =>
      readTable(
        [file],
        { vocabulary: EVENT_VOCABULARY, fields: ['unit', 'on'], words: 'events', dateOrder, profiles: [] },
        contextOf([file]),
      );
    expect((await read('')).status).toBe('question');
    const outcome = await read('ymd');
    // 2022-03-04 is day 19,055 since 1970-01-01: 52 years, 13 leap days, 62 days.
    expect(outcome.status === 'value' && outcome.value.rows[0].date('on')).toBe(52 * 365 + 13 + 31 + 28 + 3);
  });
});
