import { beforeAll, describe, expect, test } from 'vitest';
import { csv, openFilesAfterSample } from './own-files.ts';
import { servedPage } from './served-page.ts';
import { seriousFaults, until, type WatchedPage } from './watch-page.ts';

const served = servedPage();

/** Fires that only temperature and pressure tell, an id one character off, a note of an event, a swap of fires. */
const READINGS = csv(
  'east.csv',
  'unit,taken_at,fire,state,o2_pct,co_ppm,flue_C,manifold_Pa,supply_running_Pa,note',
  ...[2021, 2022, 2023, 2024].flatMap((year) => [
    `B-01,${year}-10-04T09:10,,as_found,4.1,20,182,870,1700,${year === 2023 ? 'replaced gas valve' : ''}`,
    `B-01,${year}-10-04T09:20,,as_found,5.9,12,148,310,1800,`,
    `B-02,${year}-10-05T09:10,high,as_found,4.1,20,${year === 2024 ? '148,310,1800' : '182,870,1700'},`,
    `B-02,${year}-10-05T09:20,low,as_found,5.9,12,${year === 2024 ? '182,870,1700' : '148,310,1800'},`,
  ]),
  'B-01X,2024-10-06T09:10,high,as_found,4.1,20,182,870,1700,',
);
const REGISTER = csv('units.csv', 'unit,fuel,building', 'B-01,natural_gas,East', 'B-02,natural_gas,East');

describe('what the import and the checks propose', () => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await served.open();
    await openFilesAfterSample(watched.page, [READINGS, REGISTER]);
    await until(
      'the own files',
      async () => /17 readings/.test((await watched.page.locator('#cell-readings .answer').textContent()) ?? ''),
      30,
    );
  }, 90_000);

  const entry = (cell: string, words: string | RegExp) => watched.page.locator(`#cell-${cell} li`, { hasText: words });
  const answer = async (cell: string): Promise<string> =>
    (await watched.page.locator(`#cell-${cell} .answer`).textContent()) ?? '';

  test('a fire by evidence is accepted with one click, and only then', async () => {
    await watched.page.locator('#cell-readings').scrollIntoViewIfNeeded();
    const fires = entry('readings', 'B-01: 8 readings would be high 4, low 4');
    await fires.getByRole('button').click();
    await until('the proposal to be settled', async () => (await fires.count()) === 0);
  }, 40_000);

  test('an id one character off is taken for the registered one', async () => {
    const near = entry('readings', 'B-01X would be B-01');
    expect(await near.locator('.evidence').textContent()).toContain('one character away');
    await near.getByRole('button').click();
    await until('the proposal to be settled', async () => (await near.count()) === 0);
  }, 40_000);

  test('a gap of the register is filled in on the page', async () => {
    await watched.page.locator('#cell-register').scrollIntoViewIfNeeded();
    await watched.page.getByLabel('Burner of B-01').selectOption('premix');
    await until('the gap to go', async () => (await watched.page.getByLabel('Burner of B-01').count()) === 0);
    await until('what was filled in', async () => (await watched.page.getByText('1 filled in by you').count()) === 1);
  }, 40_000);

  test('an event that a note tells of counts once it is accepted', async () => {
    await watched.page.locator('#cell-events').scrollIntoViewIfNeeded();
    expect(await answer('events')).toContain('0 events');
    await entry('events', 'B-01, 2023-10-04: gas valve').getByRole('button').click();
    await until('the event', async () => (await answer('events')).startsWith('1 event'));
  }, 40_000);

  test('suspect readings are switched off, with what that changes in the raised units', async () => {
    await watched.page.locator('#cell-checks').scrollIntoViewIfNeeded();
    const desk = watched.page.locator('#cell-checks bv-check-desk');
    await desk.getByRole('button', { name: 'left out' }).click();
    await until('the comparison', async () => (await desk.locator('.change').count()) > 0, 30);
    expect(await desk.locator('.change li').first().textContent()).not.toBe('');
    await desk.getByRole('button', { name: 'used' }).click();
  }, 60_000);

  test('a repair is signed and becomes a correction', async () => {
    const desk = watched.page.locator('#cell-checks bv-proposals');
    const repair = desk.locator('li', { hasText: 'swap high and low fire' });
    expect(await repair.getByRole('button').isDisabled()).toBe(true);
    await desk.locator('input').fill('AB');
    await repair.getByRole('button').click();
    await until(
      'the corrections',
      async () => (await watched.page.locator('#cell-corrections .answer').count()) > 0,
      30,
    );
    await until('the finding to go', async () => (await repair.count()) === 0, 30);
  }, 60_000);

  test('nothing is out of reach, and the browser has nothing to complain of', async () => {
    expect(
      await seriousFaults(watched.page, ['#cell-register', '#cell-readings', '#cell-events', '#cell-checks']),
    ).toEqual([]);
    expect(watched.troubles).toEqual([]);
  }, 40_000);
});
