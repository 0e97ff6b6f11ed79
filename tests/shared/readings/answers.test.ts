import { describe, expect, test } from 'vitest';
import { answerWith } from '../../../shared/answer-value.ts';
import type { NamedAnswer } from '../../../shared/outcome.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';
import { remarks } from './small-export.ts';

/** Answers hold for what was asked, and for no other file or column. */
const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;
const WITHOUT_UNIT = lines('Date,O2 (%)', '2024-03-13,4.6');
const WITH_UNIT = lines('Boiler,Date,O2 (%)', 'Z9,2024-03-14,4.7');

const told = async (
  files: Parameters<typeof accepted>[0],
  names: readonly string[],
  parameters = {},
): Promise<string[]> =>
  rowsOf((await accepted(files, parameters)).tables['accepted']).map((row) => names.map((name) => row[name]).join(' '));

describe('the unit of a file that names none', () => {
  test('in a profile is not that of a file with a column of units', async () => {
    const files = [fileOf('a.csv', WITHOUT_UNIT), fileOf('b.csv', WITH_UNIT)];
    const profiles = [{ constants: { unit: 'B-07' } }];
    expect(await told(files, ['unit', 'o2_pct'], { profiles })).toEqual(['B-07 4.6', 'Z9 4.7']);
  });

  test('is asked of each file of one shape', async () => {
    const files = ['a.csv', 'b.csv'].map((name, i) => fileOf(name, WITHOUT_UNIT.replace('4.6', `4.${i + 6}`)));
    let profiles: readonly NamedAnswer[] = [];
    for (const unit of ['B-07', 'B-08']) {
      const outcome = await readReadings(files, { profiles });
      if (outcome.status !== 'question' || !outcome.question.entry) throw new Error(JSON.stringify(outcome));
      expect(outcome.question.message).toContain(unit === 'B-07' ? 'a.csv' : 'b.csv');
      profiles = [answerWith(outcome.question.entry, unit), ...profiles];
    }
    expect(await told(files, ['unit', 'o2_pct'], { profiles })).toEqual(['B-07 4.6', 'B-08 4.7']);
  });
});

describe('the order of day and month', () => {
  const files = ['a.csv', 'b.csv'].map((name, i) => fileOf(name, lines('Boiler,Date,O2 (%)', `Z${i},3/4/2024,4.6`)));

  test('asked of one file says for which others the answer is', async () => {
    const outcome = await readReadings(files);
    expect(outcome.status === 'question' && outcome.question.message).toMatch(
      /^a\.csv: .*2024-04-03 or 2024-03-04; so it is in b\.csv, which the answer is for too\.$/,
    );
  });

  test('answered is remarked where it is that of several files, and a profile says it of one', async () => {
    const result = await accepted(files, { dateOrder: 'mdy' });
    expect(remarks(result).join()).toMatch(
      /a\.csv, b\.csv: nothing in these files shows whether the day, the month or the year/,
    );
    const profiles = [{ file: 'b.csv', dateOrder: 'dmy' }];
    expect(await told(files, ['unit', 'taken_at'], { dateOrder: 'mdy', profiles })).toEqual([
      'Z0 2024-03-04',
      'Z1 2024-04-03',
    ]);
  });
});

test('an answer about one column leaves the others as they were', async () => {
  const text = lines('Boiler,Date,Firing rate,O2 (%),CO', 'B-1,2024-03-13,High,4.6,28', 'B-1,2024-03-13,Low,5.6,12');
  const profiles = [{ columns: { CO: { field: 'co_ppm' } } }];
  expect(await told(text, ['fire', 'co_ppm', 'firing_rate_pct'], { profiles })).toEqual(['high 28 ', 'low 12 ']);
});

describe('a column that is fire or state by its head', () => {
  test('and by none of its words is not read, said so, and costs no reading', async () => {
    const text = lines(
      'Boiler,Date,Load,Status,O2 (%)',
      'B-1,2024-03-13,High,Pass,4.6',
      'B-2,2024-03-13,High,Fail,9.6',
    );
    expect(await told(text, ['fire', 'state', 'o2_pct'])).toEqual(['high unknown 4.6', 'high unknown 9.6']);
    expect(remarks(await accepted(text)).join()).toMatch(/"Status" is the state by its head, but none of its values/);
  });

  test('with words that a profile gives is read by them', async () => {
    const text = lines('Boiler,Date,Status,O2 (%)', 'B-1,2024-03-13,Pass,4.6', 'B-2,2024-03-13,Fail,9.6');
    const profiles = [{ words: { state: { Pass: 'as_left', Fail: 'as_found' } } }];
    expect(await told(text, ['state', 'o2_pct'], { profiles })).toEqual(['as_left 4.6', 'as_found 9.6']);
  });

  test('and holds numbers is a firing rate', async () => {
    const text = lines('Boiler,Date,Load %,O2 (%)', 'B-1,2024-03-13,100,4.6', 'B-1,2024-03-13,40,6.6');
    expect(await told(text, ['fire', 'firing_rate_pct', 'o2_pct'])).toEqual(['unnamed 100 4.6', 'unnamed 40 6.6']);
  });
});

test('an id that a spreadsheet keeps as text has its zeros and no formula', async () => {
  expect(await told(lines('Boiler,Date,O2 (%)', '="0012",2024-03-13,4.6'), ['unit'])).toEqual(['0012']);
});
