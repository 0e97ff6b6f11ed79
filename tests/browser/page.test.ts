import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../cells/catalogue.ts';
import { Desk } from '../src/cli/shell-for-tests.ts';
import { finished, servedPage } from './served-page.ts';
import { seriousFaults, until, type WatchedPage } from './watch-page.ts';

const SAMPLE = join(import.meta.dirname, '../../sample-data');
// Below a path of its own, as any web server may put it.
const served = servedPage('/campus/between-visits/');

/** An export that leaves open: the basis of CO, the unit of the flue temperature, the order of its dates. */
const UNSETTLED = {
  name: 'north.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(
    `unit;date;fire;state;O2 [%];CO [ppm];flue temp\n${[1, 2, 3]
      .flatMap((unit) =>
        [2021, 2022, 2023, 2024].flatMap((year) =>
          ['high', 'low'].flatMap((fire) =>
            ['as_found', 'as_left'].map(
              (state) =>
                `N-${unit};0${unit}/04/${year};${fire};${state};${fire === 'high' ? 4.1 : 5.6};${20 + unit};190`,
            ),
          ),
        ),
      )
      .join('\n')}\n`,
  ),
};
const REGISTER = {
  name: 'units.csv',
  mimeType: 'text/csv',
  buffer: Buffer.from(
    'unit,fuel,o2_high_target_pct,o2_high_tolerance_pct\nN-1,natural_gas,4,0.5\nN-2,natural_gas,4,0.5\n',
  ),
};

const answerOf = async (page: Page, cell: string): Promise<string> =>
  (await page.locator(`#cell-${cell} .answer`).textContent({ timeout: 20_000 })) ?? '';

/** What the command prints of a number of the sample campus, its lines joined. */
async function printed(...asked: readonly string[]): Promise<string> {
  const desk = new Desk(catalogue);
  const readings = ['readings-crew-one.csv', 'readings-crew-two.csv'].map((name) => join(SAMPLE, name));
  const files = ['--readings', ...readings, '--register', join(SAMPLE, 'register.csv')];
  const { out, err } = await desk.type('working', ...files, '--column', 'excess_air_pct', ...asked);
  desk.clear();
  expect(err).toEqual([]);
  return out.join(' ').replace(/\s+/g, ' ');
}

async function openSample(): Promise<WatchedPage> {
  const watched = await served.open();
  await until('the sample campus is calculated', () => finished(watched.page));
  return watched;
}

describe('the sample campus', () => {
  let watched: WatchedPage;
  beforeAll(async () => {
    watched = await openSample();
    await until('the tags are drawn', async () => (await watched.page.locator('bv-raised .tag').count()) > 0);
  }, 60_000);
  afterAll(() => watched?.page.close());

  test('opens with the raised units, each with its evidence, what to check first and its fire lanes', async () => {
    const { page } = watched;
    expect(await page.locator('.strip').first().getAttribute('id')).toBe('cell-raise');
    const tags = page.locator('bv-raised .tag');
    // Planted in the sample, see its README: CO of 460 ppm left open at DRU-2.
    const first = tags.first();
    expect(await first.locator('h4').textContent()).toBe('DRU-2');
    expect(await first.locator('.evidence').first().textContent()).toMatch(/460/);
    expect((await first.locator('.first').first().textContent())?.length).toBeGreaterThan(30);
    await until('the lanes are drawn', async () => (await first.locator('svg.fire-lanes').count()) === 1);
    const units = await tags.locator('h4').allTextContents();
    for (const planted of ['IRO-1', 'EMB-2', 'COB-3', 'GUL-2', 'HUT-3']) expect(units).toContain(planted);
    expect(await page.locator('[data-tier=safety] .caution').textContent()).toMatch(/leave/);
    expect(await page.locator('.cautions').textContent()).toMatch(/no safety certificate/i);
  });

  test('every reading of every file is accounted for, and a raised unit leads to its readings with file and line', async () => {
    const { page } = watched;
    await page.locator('#cell-readings').scrollIntoViewIfNeeded();
    const account = page.locator('bv-account li');
    await until('the account is drawn', async () => (await account.count()) === 2);
    for (const line of await account.allTextContents())
      expect(line).toMatch(/readings = .* accepted \+ .* set aside \+ .* duplicate/);
    const tag = page.locator('bv-raised .tag').first();
    await tag.locator('summary').first().click();
    await until('its readings are drawn', async () => (await tag.locator('[role=gridcell]').count()) > 20);
    expect(await tag.locator('bv-sheet .scroll').textContent()).toMatch(/readings-crew-one\.csv/);
  });

  test('a derived number opens its working by keyboard, and tells what the command prints', async () => {
    const { page } = watched;
    const tag = page.locator('bv-raised .tag').first();
    const figures = tag.locator('bv-derived-figures');
    await figures.locator('summary').click();
    await until('the numbers are drawn', async () => (await figures.locator('.worked').count()) > 20);
    const column = figures.locator('[role=columnheader]', { hasText: 'Excess air' });
    const place = await column.getAttribute('aria-colindex');
    // A wide sheet draws the columns in view.
    await column.scrollIntoViewIfNeeded();
    await figures.locator(`.row [aria-colindex="${place}"]`).first().click();
    const working = figures.locator('bv-working');
    await until('the working is there', async () => (await working.locator('.chain li').count()) > 3);
    await page.keyboard.press('Escape');
    await until('it is put away', async () => (await working.count()) === 0);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await until('the working is there', async () => (await working.locator('.chain li').count()) > 3);
    const said = (await working.locator('.reading .of').textContent()) ?? '';
    const [, unit, day, , fire, state] = /^(\S+), (\S+)( \S+)?, (\w+) fire, (as \w+)/.exec(said) ?? [];
    const typed = await printed('--unit', unit, '--on', day, '--fire', fire, '--state', state.replace(' ', '_'));
    const shown = async (part: string): Promise<string[]> =>
      (await working.locator(part).allTextContents()).map((text) => text.replace(/\s+/g, ' ').trim());
    const drawn = [
      ...(await shown('.chain .what')),
      ...(await shown('.chain .symbols')),
      ...(await shown('.chain .numbers')),
      ...(await shown('.chain .result')),
      ...(await shown('.reading .of')),
      ...(await shown('.reading .file')),
      ...(await shown('.sources li')),
    ];
    expect(drawn.length).toBeGreaterThan(20);
    for (const text of drawn) expect(typed).toContain(text);
    const line = (await shown('.reading pre'))[0];
    expect(typed.replaceAll(' ', '')).toContain(line.replaceAll(' ', ''));
    const percents = await shown('.budget .percent');
    expect(percents.length).toBeGreaterThan(0);
    for (const percent of percents) expect(typed).toContain(percent);
    await page.keyboard.press('Escape');
  });

  test('a raised figure leads on to the derived number it rests on', async () => {
    const { page } = watched;
    const first = page.locator('bv-raised .tag').first();
    await first
      .getByRole('button', { name: /^Show its working: / })
      .first()
      .click();
    const working = first.locator('bv-finding-working bv-working').first();
    await until('both chains are there', async () => (await working.locator('.chain').count()) === 2);
    // 460 ppm at 8.2 % O2 stands in the sample's file: 460 x 20.9 / (20.9 - 8.2) = 757.01 ppm air-free.
    expect(await working.locator('.chain .numbers').allTextContents()).toContain('ΔCO = 757.01 ppm − 400 ppm');
    expect(await working.locator('.reading .file').textContent()).toMatch(/readings-crew-one\.csv, line \d+/);
    expect(await seriousFaults(page, ['bv-raised'])).toEqual([]);
    await working.getByRole('button', { name: 'Put away', exact: true }).first().click();
    expect(await first.locator('bv-finding-working bv-working').count()).toBe(0);
  });

  test('a blank is edited by keyboard; the page follows, and undo brings it back', async () => {
    const { page } = watched;
    const blank = page.locator('#cell-drift .sentence button.blank').first();
    const [before, answer] = [await blank.textContent(), await answerOf(page, 'drift')];
    await blank.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('1461');
    await page.keyboard.press('Enter');
    await until('the sentence follows', async () => ((await blank.textContent()) ?? '').includes('1461'));
    await until('the answer follows', async () => (await answerOf(page, 'drift')) !== answer);
    await until('the change is said', async () => /follow/.test((await page.locator('.said').textContent()) ?? ''));
    await page.keyboard.press('Control+z');
    await until(
      'undone',
      async () => (await blank.textContent()) === before && (await answerOf(page, 'drift')) === answer,
    );
  });

  test('what cannot be read in a blank is refused in one sentence, and Escape leaves all as it was', async () => {
    const { page } = watched;
    const blank = page.locator('#cell-drift .sentence button.blank').first();
    const before = await blank.textContent();
    await blank.click();
    await page.keyboard.type('soon');
    await page.keyboard.press('Enter');
    expect(await page.locator('#cell-drift .fault').textContent()).toMatch(/takes a number; "soon" is none/);
    await page.keyboard.press('Escape');
    expect(await blank.textContent()).toBe(before);
  });

  test('has no serious fault for assistive technology, and the browser complained of nothing', async () => {
    // Sheets and lanes are held against the same rules in the invented states; here they would take most of the time.
    expect(
      await seriousFaults(watched.page, ['.plate', '.side', '#cell-raise .name', '#cell-drift .sentence', '.cautions']),
    ).toEqual([]);
    expect(watched.troubles).toEqual([]);
  });
});

describe("the user's own files", () => {
  const files = ['readings-crew-one.csv', 'register.csv'];

  test('are opened with the picker, each under the part it was recognized for', async () => {
    const { page, troubles } = await served.open();
    await page.getByRole('button', { name: 'Open your own files' }).click();
    await page
      .locator('.tray input[type=file]:not([webkitdirectory])')
      .setInputFiles(files.map((name) => join(SAMPLE, name)));
    await until('both lie in the tray', async () => (await page.locator('.tray .files li').count()) === 2);
    const roles = await page
      .locator('.tray select')
      .evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value));
    expect(roles).toEqual(['readings', 'register']);
    await page.getByRole('button', { name: 'Open these files' }).click();
    await until(
      'the own notebook is calculated',
      async () => (await page.locator('.tray').count()) === 0 && (await finished(page)),
    );
    expect(await page.locator('.plate h1').textContent()).toMatch(/Campus review/);
    expect(await page.locator('.news.sample').count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('that do not say everything are asked about, one question after the other, and answered on the page', async () => {
    const { page, troubles } = await served.open();
    await page.getByRole('button', { name: 'Open your own files' }).click();
    await page.locator('.tray input[type=file]:not([webkitdirectory])').setInputFiles([UNSETTLED, REGISTER]);
    await until('both lie in the tray', async () => (await page.locator('.tray .files li').count()) === 2);
    await page.getByRole('button', { name: 'Open these files' }).click();
    for (const [question, answer] of [
      ['raw as the analyzer shows it or air-free', 'raw'],
      ['does not say its unit', 'C'],
      ['whether the day or the month stands first', 'day first'],
    ]) {
      const call = page.locator('.calls .question', { hasText: question });
      await until(`asked: ${question}`, async () => (await call.count()) === 1);
      await call.getByRole('button', { name: answer }).first().click();
    }
    await until('all is calculated', () => finished(page));
    expect(await answerOf(page, 'readings')).toMatch(/^48 readings/);
    expect(await page.locator('.calls').count()).toBe(0);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('are laid out when dropped on the page; an empty one is refused in one sentence', async () => {
    const { page } = await served.open();
    await until('the page is drawn', async () => (await page.locator('main').count()) === 1);
    const texts = files.map((name) => [name, readFileSync(join(SAMPLE, name), 'utf8')] as const);
    await page.evaluate((dropped) => {
      const transfer = new DataTransfer();
      for (const [name, text] of [...dropped, ['nothing.csv', ''] as const]) transfer.items.add(new File([text], name));
      document
        .querySelector('main')
        ?.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, texts);
    await until('both lie in the tray', async () => (await page.locator('.tray .files li').count()) === 2);
    expect(await page.locator('.tray .fault').textContent()).toMatch(/nothing\.csv is empty/);
    await page.close();
  });
});
