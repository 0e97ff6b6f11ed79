import { beforeAll, describe, expect, test } from 'vitest';
import { csv, openFilesAfterSample } from './own-files.ts';
import { servedPage } from './served-page.ts';
import { seriousFaults, until, type WatchedPage } from './watch-page.ts';

const served = servedPage();

/** A date under a head that nobody knows, and a temperature taken for nothing. */
const READINGS = csv(
  'east.csv',
  'Tag,Visited,Fire,State,O2 (%),CO raw (ppm),Stack (°C),Intake',
  ...[2021, 2022, 2023].flatMap((year) => [
    `B-01,${year}-10-04,high,as found,4.1,20,182,61`,
    `B-01,${year}-10-04,low,as found,5.9,12,148,63`,
  ]),
);
const REGISTER = csv('units.csv', 'unit,fuel', 'B-01,natural_gas');

describe('what the columns of a file are', () => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await served.open();
    await openFilesAfterSample(watched.page, [READINGS, REGISTER]);
    await until('the question', async () => (await watched.page.locator('#cell-readings .question').count()) > 0, 30);
  }, 90_000);

  const cell = () => watched.page.locator('#cell-readings');
  const desk = () => cell().locator('bv-columns');
  const told = async (): Promise<string> => (await desk().locator('summary').first().textContent()) ?? '';

  test('the column that is missing is asked for and found among the others', async () => {
    await cell().locator('.question button', { hasText: '"Visited", such as 2021-10-04' }).click();
    await until('the readings', async () => /6 readings/.test((await cell().locator('.answer').textContent()) ?? ''));
    await until('the list', async () => (await told()).includes('7 columns are read, 1 not: "Intake"'));
    expect(await told()).toContain('as remembered under "east.csv"');
  }, 40_000);

  test('a column that nobody understood is named, with its unit, and the file is read so', async () => {
    await desk().locator('summary').first().click();
    await desk().getByLabel('What "Intake" is').selectOption('air');
    await desk().getByLabel('Unit of "Intake"').selectOption({ label: '°F' });
    await desk().getByRole('button', { name: 'Read it so, and remember' }).click();
    await until('the list', async () => (await told()).includes('8 columns are read,'));
    // 61 °F = 16.1 °C.
    const sheet = cell().locator('bv-sheet [role=grid]').first();
    await sheet.evaluate((frame) => frame.scrollTo({ left: 1300 }));
    await until('the air', async () => (await cell().locator('bv-cell-tables').getByText('16.1').count()) > 0);
  }, 40_000);

  test('a profile can be taken away for the commands, and forgotten', async () => {
    const link = desk().getByRole('link', { name: 'Save as a file for the commands' });
    expect(await link.getAttribute('download')).toBe('east.csv.json');
    const text = decodeURIComponent(((await link.getAttribute('href')) ?? '').replace(/^[^,]*,/, ''));
    expect(JSON.parse(text)).toMatchObject({
      name: 'east.csv',
      table: 'readings',
      columns: { Visited: { field: 'taken_at' }, Intake: { field: 'air', unit: '[degF]' } },
    });
    expect(await seriousFaults(watched.page, ['#cell-readings'])).toEqual([]);
    await desk().getByRole('button', { name: 'Forget: east.csv' }).click();
    await until('the question again', async () => (await cell().locator('.question').count()) > 0);
    expect(watched.troubles).toEqual([]);
  }, 40_000);
});

test('what a word for the fire means that nobody knows is said beside its column', async () => {
  const { page, troubles } = await served.open();
  const rows = ['high', 'Boost', 'low'].map((fire, i) => `B-01,2021-10-04,${fire},as found,4.${i},20,182`);
  await openFilesAfterSample(page, [
    csv('west.csv', 'Unit,Date,Fire,State,O2 (%),CO raw (ppm),Stack (°C)', ...rows),
    REGISTER,
  ]);
  const cell = page.locator('#cell-readings');
  const told = async (): Promise<string> => (await cell.locator('.answer').first().textContent()) ?? '';
  await until('two of three readings', async () => /2 readings/.test(await told()), 30);
  await cell.getByLabel('What the word "Boost" means').selectOption('high');
  await cell.getByRole('button', { name: 'Read it so, and remember' }).click();
  await until('all three', async () => /3 readings/.test(await told()), 30);
  expect(troubles).toEqual([]);
}, 90_000);
