import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { describe, expect, test } from 'vitest';
import { servedPage } from './served-page.ts';
import { seriousFaults, until, type WatchedPage } from './watch-page.ts';

const ROOT = join(import.meta.dirname, '../..');
const served = servedPage('/', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'between-visits-states-'));
  await build({
    root: join(ROOT, 'tests/browser/stage'),
    base: './',
    configFile: false,
    mode: 'production',
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: true, target: 'es2022', minify: false },
  });
  return folder;
});

async function openState(state: string, options = {}): Promise<WatchedPage> {
  const watched = await served.open(`?state=${state}`, options);
  await until(`state ${state} is drawn`, () =>
    watched.page.evaluate(() => document.querySelector('.strip, .news') !== null),
  );
  return watched;
}

test.each([
  ['done', 'light'],
  ['done', 'dark'],
  ['error', 'light'],
  ['question', 'dark'],
  ['stale', 'light'],
  ['refused', 'light'],
] as const)('state %s by %s: no complaint, no serious fault for assistive technology', async (state, colorScheme) => {
  const { page, troubles } = await openState(state, { colorScheme });
  await page.waitForTimeout(200);
  expect(await seriousFaults(page)).toEqual([]);
  expect(troubles).toEqual([]);
  await page.close();
});

test.each(['running', 'empty', 'loading'])('state %s: no complaint, and it says what it is', async (state) => {
  const { page, troubles } = await openState(state);
  expect((await page.locator('main').textContent())?.trim()).not.toBe('');
  expect(troubles).toEqual([]);
  await page.close();
});

describe('what a state says', () => {
  test('an error: at the top, at its cell, and as a shut valve; readers say what they wait for', async () => {
    const { page } = await openState('error');
    expect(await page.locator('.calls').textContent()).toContain('derive: the fuel "biogas" is not known');
    expect(await page.locator('#cell-derive .trouble').textContent()).toContain('last good result');
    expect(await page.locator('.flow .valve.shut').count()).toBe(1);
    expect(await page.locator('.flow li', { hasText: 'drift' }).textContent()).toContain('waits for derive');
    await page.close();
  });

  test('a question: can be answered at the top of the page, by keyboard', async () => {
    const { page } = await openState('question');
    const answer = page.locator('.calls').getByRole('button', { name: 'Month first' });
    await answer.focus();
    await page.keyboard.press('Enter');
    await until('the answer reaches the session', () =>
      page.evaluate(() => document.querySelector('.said')?.textContent !== ''),
    );
    await page.close();
  });

  test('work under way: says how far, and which cells wait', async () => {
    const { page } = await openState('running');
    expect(await page.locator('.flow li', { hasText: 'derive' }).first().textContent()).toContain('at work, 63 %');
    expect(await page.locator('.flow .summary').textContent()).toContain('1 at work');
    // What has been at work for a while can be stopped.
    await page.getByRole('button', { name: 'Stop here' }).click();
    await until('it is stopped', async () => (await page.getByRole('button', { name: 'Go on' }).count()) === 1);
    await page.close();
  });
});

describe('a million rows', () => {
  test('are scrolled and walked to both ends, with the place said in words', async () => {
    const { page, troubles } = await openState('huge');
    const sheet = page.locator('#cell-readings bv-sheet');
    await sheet.scrollIntoViewIfNeeded();
    await until('rows are drawn', async () => (await sheet.locator('[role=gridcell]').count()) > 0);
    expect(await sheet.locator('[role=grid]').getAttribute('aria-rowcount')).toBe('1000001');
    await sheet.locator('[role=gridcell]').first().click();
    await page.keyboard.press('Control+End');
    await until('the last row is drawn', async () => (await sheet.locator('[aria-rowindex="1000001"]').count()) === 1);
    expect(await sheet.locator('.note').textContent()).toMatch(/of 1.000.000$/);
    await page.keyboard.press('PageUp');
    await page.keyboard.press('Control+Home');
    await until('the first row is drawn', async () => (await sheet.locator('[aria-rowindex="2"]').count()) === 1);
    expect(await sheet.locator('[role=row]').count()).toBeLessThan(40);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('are sorted from the head, by keyboard', async () => {
    const { page } = await openState('done');
    const sheet = page.locator('#cell-readings bv-sheet');
    await sheet.scrollIntoViewIfNeeded();
    await until('rows are drawn', async () => (await sheet.locator('[role=gridcell]').count()) > 0);
    const head = sheet.locator('[role=columnheader]').first();
    await head.locator('button').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await until('the order is said', async () => (await head.getAttribute('aria-sort')) === 'descending');
    await page.close();
  });
});

test('on a phone nothing is cut off sideways, and the flow is folded away', async () => {
  const { page } = await openState('done', { viewport: { width: 390, height: 844 } });
  await page.waitForTimeout(400);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  expect(await page.locator('.flow details').getAttribute('open')).toBeNull();
  await page.close();
});
