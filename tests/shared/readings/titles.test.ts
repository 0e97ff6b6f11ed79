import { expect, test } from 'vitest';
import { readTitle } from '../../../shared/readings/title-words.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const told = async (...lines: readonly string[]): Promise<string[]> =>
  rowsOf((await accepted(`${lines.join('\n')}\n`)).tables['accepted']).map(
    ({ unit, taken_at, fire, state, o2_pct }) => `${unit} ${taken_at} ${fire} ${state} ${o2_pct}`,
  );

test.each([
  ['As-found readings', '', 'as_found'],
  ['AS LEFT', '', 'as_left'],
  ['High fire', 'high', ''],
  ['Low fire - as left', 'low', 'as_left'],
  ['Teillast', 'low', ''],
  ['As found and as left', '', ''],
  ['After the new valve', '', ''],
  ['Readings', '', ''],
])('the title "%s" names a fire or a state, or none', (title, fire, state) => {
  expect(readTitle(title)).toMatchObject({ fire, state, date: '' });
});

test('a title above a table names the state of its rows', async () => {
  const head = 'Boiler,Date,Fire,O2 (%),Stack (°F)';
  const lines = ['As-found readings', head, 'B-1,2024-03-13,high,4.6,312', 'B-1,2024-03-13,low,5.6,250'];
  expect(await told(...lines, '', 'AS LEFT', head, 'B-1,2024-03-13,high,4.1,310')).toEqual(
    [
      'B-1 2024-03-13 high as_found 4.6',
      'B-1 2024-03-13 low as_found 5.6',
      'B-1 2024-03-13 high as_left 4.1',
    ].toSorted(),
  );
});

test('a title between the rows of one table names the fire of those below it', async () => {
  const head = 'Boiler,Date,State,O2 (%),Stack (°F)';
  expect(
    await told('High fire', head, 'B-1,2024-03-13,as found,4.6,312', 'Low fire,,,,', 'B-1,2024-03-13,as found,5.6,250'),
  ).toEqual(['B-1 2024-03-13 high as_found 4.6', 'B-1 2024-03-13 low as_found 5.6']);
});

test('a date and a unit above each table are those of its rows; the state of the last unit is not that of the next', async () => {
  const head = 'Fire,O2 (%),Stack (°F),CO raw (ppm)';
  expect(
    await told(
      ...['Boiler: B-1', 'Test date: 13.03.2024', 'AS FOUND', head, 'high,4.6,312,11', 'low,5.6,250,12', ''],
      ...['Boiler: B-2', 'Test date: 14.04.2025', head, 'high,4.1,310,13', 'low,5.1,251,14'],
    ),
  ).toEqual([
    'B-1 2024-03-13 high as_found 4.6',
    'B-1 2024-03-13 low as_found 5.6',
    'B-2 2025-04-14 high unknown 4.1',
    'B-2 2025-04-14 low unknown 5.1',
  ]);
});

test('a unit in a title above each table is that of its rows', async () => {
  const head = 'Date,Fire,State,O2 (%),Stack (°F)';
  expect(
    await told(
      ...['Boiler B-1', head, '2024-03-13,high,as found,4.6,312', ''],
      ...['Boiler No. 2', head, '2024-04-14,high,as found,4.1,310'],
    ),
  ).toEqual(['2 2024-04-14 high as_found 4.1', 'B-1 2024-03-13 high as_found 4.6'].toSorted());
});

test('a date of export is no date of readings', async () => {
  const text = 'Exported: 2024-05-01\nBoiler,Fire,O2 (%),Stack (°F)\nB-1,high,4.6,312\n';
  expect((await readReadings([fileOf('export.csv', text)])).status).not.toBe('value');
});
