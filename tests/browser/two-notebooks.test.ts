import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { heading, json, SMALL } from './own-files.ts';
import { finished, servedPage } from './served-page.ts';
import { until, type WatchedPage } from './watch-page.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-data');
const served = servedPage();

describe('two notebooks of one fleet', () => {
  const other = JSON.parse(readFileSync(join(SAMPLE, 'campus-review.json'), 'utf8')) as {
    title: string;
    cells: { name: string; kind: string; parameters: Record<string, unknown> }[];
  };
  other.title = 'North crew';
  for (const cell of other.cells) if (cell.kind === 'drift') cell.parameters['horizonDays'] = 1500;
  for (const cell of other.cells) if (cell.kind === 'note') cell.parameters['text'] = 'Ask at the gate.';
  other.cells.push({ name: 'crew note', kind: 'note', parameters: { text: 'From the north crew.' } });

  let watched: WatchedPage;
  let page: Page;
  beforeAll(async () => {
    watched = await served.open();
    page = watched.page;
    await until('the sample is calculated', () => finished(page));
    await page.getByRole('button', { name: 'Merge or compare' }).click();
  }, 60_000);
  afterAll(() => page?.close());

  test('are compared: what was decided otherwise, and which units that raises; two days of one as well', async () => {
    await page.locator('.two input[type=file]').setInputFiles(json('north.json', other));
    await page.getByRole('button', { name: 'Compare this one with it' }).click();
    await until('they are compared', async () => (await page.locator('.comparison').count()) === 1);
    const said = (await page.locator('.comparison').textContent()) ?? '';
    expect(said).toMatch(/Cell added: crew note \(note\)/);
    expect(said).toMatch(/Drift: days ahead was "\d+ days", is "1500 days"/);
    expect(said).toMatch(/Newly raised: \d+/);
    await page.locator('.two input[name=from]').fill('2020-01-01');
    await page.getByRole('button', { name: 'Compare the two days' }).click();
    await until('the days are compared', async () =>
      /2020-01-01 to/.test((await page.locator('.comparison').textContent()) ?? ''),
    );
    // Planted in the sample, see its README: DRU-2 read 460 ppm CO in its last visit only.
    expect(await page.locator('.comparison').textContent()).toMatch(/Newly raised.*DRU-2/s);
    expect(watched.troubles).toEqual([]);
  });

  test('are made one: every contradiction is asked, one after the other, and nothing changes before the last answer', async () => {
    const before = await heading(page);
    await page.locator('.two input[type=file]').setInputFiles(json('north.json', other));
    await page.getByRole('button', { name: 'Take it into this one' }).click();
    const question = page.locator('.two .question');
    await until('it asks', async () => (await question.count()) === 1);
    expect(await question.textContent()).toMatch(/question 1 of 2.*The title of the notebook.*North crew/s);
    await question.getByRole('button', { name: /^Keep:/ }).click();
    await until('it asks on', async () => /question 2 of 2/.test((await question.textContent()) ?? ''));
    expect(await page.locator('.strip:has(h2:text-is("crew note"))').count()).toBe(0);
    await question.getByRole('button', { name: 'Take: Ask at the gate.' }).click();
    await until('it is done', async () =>
      /north\.json is taken in/.test((await page.locator('.two .outcome').textContent()) ?? ''),
    );
    await until('it is calculated', () => finished(page));
    expect(await heading(page)).toBe(before);
    expect(await page.locator('.strip:has(h2:text-is("crew note"))').count()).toBe(1);
    expect(await page.locator('#cell-drift .sentence').textContent()).toMatch(/1500 days/);
    expect(await page.locator('#cell-note .sentence').textContent()).toMatch(/Ask at the gate/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await until('undone', async () => (await page.locator('.strip:has(h2:text-is("crew note"))').count()) === 0);
  });

  test('of different fleets are refused in one sentence', async () => {
    await page.locator('.two input[type=file]').setInputFiles(json('n.json', SMALL));
    await page.getByRole('button', { name: 'Take it into this one' }).click();
    await until('it is refused', async () =>
      /no data file in common/.test((await page.locator('.two .fault').textContent()) ?? ''),
    );
  });
});
