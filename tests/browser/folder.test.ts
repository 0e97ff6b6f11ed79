import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { servedPage } from './served-page.ts';
import { until } from './watch-page.ts';

const served = servedPage();
const folder = mkdtempSync(join(tmpdir(), 'between-visits-exports-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Two years under one name, as an analyzer's software exports them, a register and what else lies about. */
function fill(): void {
  const put = (path: string, text: string): void => {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  for (const year of [2023, 2024])
    put(
      `${year}/readings.csv`,
      `unit,taken_at,fire,state,o2_pct\nB-01,${year}-10-04,high,as_found,4.1\nB-01,${year}-10-04,low,as_found,5.9\n`,
    );
  put('register.csv', 'unit,fuel,building\nB-01,natural_gas,East\n');
  put('plan.pdf', '%PDF-1.7');
}

test('a whole folder: files of one name stay two, what is no table is named', async () => {
  fill();
  const { page, troubles } = await served.open();
  await page.getByRole('button', { name: 'Open your own files' }).click();
  await page.locator('bv-own-files input[webkitdirectory]').setInputFiles(folder);
  await until('they lie in the tray', async () => (await page.locator('.tray .files li').count()) === 3);
  expect(await page.locator('.tray .fault').first().textContent()).toMatch(/no table and was left out: .*plan\.pdf/);
  await page.getByRole('button', { name: 'Open these files' }).click();
  await until(
    'the readings of both years',
    async () => /4 readings from 2 files/.test((await page.locator('#cell-readings .answer').textContent()) ?? ''),
    30,
  );
  expect(await page.locator('#cell-readings .sentence').first().textContent()).toContain('2023/readings.csv');
  expect(troubles).toEqual([]);
  await page.close();
}, 60_000);
