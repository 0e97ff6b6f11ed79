import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { finished, servedPage } from './served-page.ts';
import { seriousFaults, until, type WatchedPage } from './watch-page.ts';

const served = servedPage();

const text = async (found: Locator): Promise<string> => (await found.textContent()) ?? '';
const raisedUnits = (page: Page): Promise<string[]> => page.locator('bv-raised .tag h4').allTextContents();

/** By the answer of the raised units, which follows wherever the page is scrolled to. DRU-2 is the only one of its tier. */
const isUnsafe = async (page: Page): Promise<boolean> => /safety/.test(await text(page.locator('#cell-raise .answer')));

/** Opens the slip for the reading in this row of the sheet, standing on this column. */
async function openSlip(page: Page, within: Locator, row: number, column: string): Promise<Locator> {
  await until('rows are drawn', async () => (await within.locator('[role=gridcell]').count()) > 0);
  const head = within.locator('[role=columnheader]', { hasText: column }).first();
  const place = await head.getAttribute('aria-colindex');
  await within.locator(`[aria-rowindex="${row + 1}"] [aria-colindex="${place}"]`).click();
  await within.getByRole('button', { name: 'Correct this reading' }).click();
  const slip = within.locator('bv-correction-slip form');
  await slip.waitFor();
  await page.waitForTimeout(50);
  return slip;
}

async function sign(slip: Locator, reason: string): Promise<void> {
  await slip.getByRole('textbox', { name: 'Reason' }).fill(reason);
  await slip.getByLabel('Your initials').fill('KL');
  await slip.getByRole('button', { name: 'Make the correction' }).click();
}

describe('corrections made on the page', () => {
  let watched: WatchedPage;
  let page: Page;
  beforeAll(async () => {
    watched = await served.open();
    page = watched.page;
    await until('the sample campus is calculated', () => finished(page));
    await until('the tags are drawn', async () => (await raisedUnits(page)).length > 0);
  }, 60_000);
  afterAll(() => page?.close());

  test('a reading behind a raised unit is put right: the list of raised units follows at once, and undo brings it back', async () => {
    // The sample's README: 460 ppm CO were left open at DRU-2, in the last visit of crew one.
    const tag = page.locator('bv-raised .tag', { has: page.locator('h4', { hasText: 'DRU-2' }) });
    await tag.locator('summary', { hasText: /^\s*Readings of DRU-2/ }).click();
    const sheet = tag.locator('bv-sheet').first();
    await until('rows are drawn', async () => (await sheet.locator('[role=gridcell]').count()) > 0);
    const co = sheet.locator('[role=columnheader]', { hasText: 'CO' }).filter({ hasNotText: 'CO2' }).first();
    await co.locator('button').click();
    await co.locator('button').click();
    await until('the highest CO stands first', async () =>
      /460/.test(await text(sheet.locator('[aria-rowindex="2"]'))),
    );
    const place = await co.getAttribute('aria-colindex');
    await sheet.locator(`[aria-rowindex="2"] [aria-colindex="${place}"]`).click();
    await tag.getByRole('button', { name: 'Correct this reading' }).click();
    const slip = tag.locator('bv-correction-slip form');
    expect(await slip.locator('select[name=column]').inputValue()).toBe('co_ppm');
    await slip.getByLabel('should be, in ppm').fill('46');
    await slip.getByRole('button', { name: 'Make the correction' }).click();
    await until('a reason is asked for', async () => /reason/.test(await text(slip.locator('.fault'))));
    await sign(slip, 'A zero too many on the printout.');
    await until(
      'it follows',
      async () => (await page.locator('#cell-corrections').count()) === 1 && (await finished(page)),
    );
    await until('DRU-2 is no longer raised', async () => !(await raisedUnits(page)).includes('DRU-2'));
    await page.getByRole('button', { name: 'Undo' }).click();
    await until('DRU-2 is raised again', async () => (await raisedUnits(page)).includes('DRU-2'));
    expect(await page.locator('#cell-corrections').count()).toBe(0);
    await page.getByRole('button', { name: 'Redo' }).click();
    await until('and is not', async () => !(await raisedUnits(page)).includes('DRU-2'));
  });

  test('every correction is listed with its signature, lifted off there and laid back on', async () => {
    const list = page.locator('#cell-corrections bv-corrections');
    await page.locator('#cell-corrections').scrollIntoViewIfNeeded();
    const line = list.locator('li').first();
    await until('it is listed', async () => /in effect: 1 reading/.test(await text(line)));
    expect(await text(line)).toMatch(/CO of DRU-2.* is 46 ppm.*imported as 460/s);
    expect(await text(line)).toMatch(/A zero too many on the printout\..*KL/s);
    await line.getByRole('button', { name: /^Lift it off/ }).click();
    await until('a unit is raised for safety again', () => isUnsafe(page));
    await until('it says so', async () => /lifted off/.test(await text(line)));
    await line.getByRole('button', { name: /^Lay it back on/ }).click();
    await until('and is not', async () => !(await isUnsafe(page)));
  });

  test('a reading is set aside from the table of readings, and restored with a reason', async () => {
    await page.locator('#cell-corrections').scrollIntoViewIfNeeded();
    const strip = page.locator('#cell-corrections');
    await strip.getByRole('button', { name: /^Readings as corrected/ }).click();
    const slip = await openSlip(page, strip.locator('bv-readings-sheet'), 1, 'Taken');
    await slip.getByText('Set this reading aside').click();
    await sign(slip, 'The burner was not at rest.');
    const list = strip.locator('bv-corrections li');
    await until(
      'it is listed',
      async () => (await list.count()) === 2 && /set aside/.test((await list.allTextContents()).join()),
    );
    await until('it is calculated', () => finished(page));
    expect(await text(strip.locator('.answer'))).toMatch(/1 of them set aside/);
    const line = list.filter({ hasText: 'is set aside' });
    await until('in effect', async () => /in effect/.test(await text(line)));
    await line.getByRole('button', { name: /^Restore/ }).click();
    await sign(line.locator('form'), 'It was at rest after all.');
    await until(
      'restored',
      async () => /counts again/.test((await list.allTextContents()).join()) && (await finished(page)),
    );
    expect(await text(strip.locator('.answer'))).not.toMatch(/set aside/);
    expect(await text(list.filter({ hasText: 'is set aside' }))).toMatch(/later correction/);
  });

  test.each([
    ['Name its fire', 'The fire is', 'low', /The fire of .* is low/],
    ['Name its state', 'It was read', 'trial', /was read trial/],
  ])('%s', async (doing, label, word, said) => {
    const strip = page.locator('#cell-corrections');
    const slip = await openSlip(page, strip.locator('bv-readings-sheet'), 3, 'Technician');
    await slip.getByText(doing).click();
    await slip.getByLabel(label).selectOption(word);
    await sign(slip, 'Written in the margin.');
    await until('it is listed', async () =>
      said.test((await strip.locator('bv-corrections li').allTextContents()).join('\n')),
    );
    await until('it is calculated', () => finished(page));
  });

  test('two ids are made one unit, and two units swapped at a visit; each says how many readings it touches', async () => {
    const strip = page.locator('#cell-corrections');
    for (const [doing, label, other, said] of [
      [/is another spelling of one unit/, /^All readings of/, 'IRO-1', /belong to IRO-1.*in effect: \d+ readings/s],
      [
        /Two units were mixed up/,
        /was mixed up with/,
        'EMB-2',
        /EMB-2 on \d{4}-\d{2}-\d{2} are swapped.*in effect: \d+ readings/s,
      ],
    ] as const) {
      const slip = await openSlip(page, strip.locator('bv-readings-sheet'), 2, 'Unit');
      await slip.getByText(doing).click();
      await slip.getByLabel(label).fill(other);
      await sign(slip, 'Two crews, two spellings.');
      await until('it is listed', async () =>
        (await strip.locator('bv-corrections li').allTextContents()).some((line) => said.test(line)),
      );
      await until('it is calculated', () => finished(page));
    }
  });

  test('has no serious fault for assistive technology, and the browser complained of nothing', async () => {
    const strip = page.locator('#cell-corrections');
    await openSlip(page, strip.locator('bv-readings-sheet'), 2, 'Unit');
    expect(await seriousFaults(page, ['#cell-corrections'])).toEqual([]);
    expect(watched.troubles).toEqual([]);
  });
});
