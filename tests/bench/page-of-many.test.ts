import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchBrowser } from '../browser/find-browser.ts';
import { until, watchPage } from '../browser/watch-page.ts';
import { buildPage, removePage, serveAt } from '../src/app/built-page.ts';
import { makeFleet } from './fleet.ts';
import { type LongestTask, longestTask } from './watch-tasks.ts';

const folder = mkdtempSync(join(tmpdir(), 'between-visits-many-'));
let page = '';
let browser: Browser;
let server: Awaited<ReturnType<typeof serveAt>>;
beforeAll(async () => {
  page = buildPage();
  server = await serveAt(page, '/');
  browser = await launchBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(folder, { recursive: true, force: true });
  removePage(page);
});

const summary = (page: Page): Promise<string> =>
  page.evaluate(() => document.querySelector('.flow .summary')?.textContent ?? '');
const finished = async (page: Page): Promise<boolean> => /^(\d+) of \1 cells/.test(await summary(page));

/** Opens a fleet from two files; gives back when the first rows of its readings were painted, ms after the click. */
async function openFleet(page: Page, rows: number): Promise<{ toRows: number; longest: LongestTask }> {
  const fleet = makeFleet(rows, 7);
  const files = [
    [join(folder, `readings-${rows}.csv`), fleet.readings],
    [join(folder, `register-${rows}.csv`), fleet.register],
  ] as const;
  for (const [name, text] of files) writeFileSync(name, text);
  await until('the sample is calculated', () => finished(page));
  await page.getByRole('button', { name: 'Open your own files' }).click();
  await page.locator('.tray input[type=file]:not([webkitdirectory])').setInputFiles(files.map(([name]) => name));
  await until('both lie in the tray', async () => (await page.locator('.tray .files li').count()) === 2);
  let toRows = Number.NaN;
  const longest = await longestTask(browser, page, async () => {
    toRows = await page.evaluate(
      (wanted) =>
        new Promise<number>((resolve) => {
          const begun = performance.now();
          [...document.querySelectorAll<HTMLElement>('.tray button')]
            .find((b) => b.textContent?.includes('Open these'))
            ?.click();
          const look = (): void => {
            const strip = document.querySelector('#cell-readings');
            const isOwn = document.querySelector('.plate h1')?.textContent?.includes('Campus review') ?? false;
            // The readings stand below the raised units: they are looked at to be drawn.
            if (isOwn) strip?.scrollIntoView();
            const sheet = strip
              ?.querySelector('bv-cell-tables')
              ?.shadowRoot?.querySelector('bv-readings-sheet, bv-worked-sheet, bv-sheet');
            const grid = (sheet?.shadowRoot?.querySelector('bv-sheet') ?? sheet)?.shadowRoot;
            const first = grid?.querySelector('[role=gridcell]')?.textContent ?? '';
            if (isOwn && /^U-/.test(first))
              requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - begun)));
            else if (performance.now() - begun > wanted) resolve(Number.NaN);
            else setTimeout(look, 5);
          };
          look();
        }),
      60_000,
    );
  });
  return { toRows, longest };
}

/** From the key that ends an edit of a cell's first blank to the frame after the last cell that follows, in ms. */
async function timeOfChange(page: Page, cell: string, typed: number): Promise<number> {
  await page.locator(`#cell-${cell}`).scrollIntoViewIfNeeded();
  await page.locator(`#cell-${cell} .sentence button.blank`).first().click();
  await page.locator(`#cell-${cell} .entry input`).fill(String(typed));
  return page.evaluate(
    ({ cell, wanted }) =>
      new Promise<number>((resolve) => {
        const strip = document.querySelector<HTMLElement & { cell: { version: number } }>(
          `bv-strip:has(#cell-${cell})`,
        );
        const before = strip?.cell.version ?? 0;
        type Drawn = HTMLElement & { isUpdatePending: boolean; near: boolean; units: readonly unknown[] };
        const raised = document.querySelector<Drawn>('bv-strip:has(#cell-raise)');
        const list = raised?.querySelector<Drawn>('bv-raised');
        const unitsBefore = list?.units;
        /** The raised units, where they are on the screen or near it, are those that now are, and each is drawn. */
        const areTagsDrawn = (): boolean =>
          !raised?.near ||
          (list?.units !== unitsBefore &&
            ![list, ...(list?.shadowRoot?.querySelectorAll<Drawn>('bv-raised-tag') ?? [])].some(
              (part) => part?.isUpdatePending,
            ));
        const begun = performance.now();
        const look = (): void => {
          const text = document.querySelector('.flow .summary')?.textContent ?? '';
          const sentence = document.querySelector(`#cell-${cell} .sentence`)?.textContent ?? '';
          const isFinished = sentence.includes(wanted) && /^(\d+) of \1 cells/.test(text);
          if (isFinished && (strip?.cell.version ?? 0) > before && areTagsDrawn())
            requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - begun)));
          else setTimeout(look, 1);
        };
        document
          .querySelector(`#cell-${cell} .entry input`)
          ?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
        look();
      }),
    { cell, wanted: String(typed) },
  );
}

/** Types into a blank and turns the wheel over the sheet of the readings, while something is calculated or not. */
async function typeAndScroll(page: Page): Promise<void> {
  await page.locator('#cell-readings').scrollIntoViewIfNeeded();
  await page.mouse.move(800, 450);
  for (let turn = 0; turn < 12; turn++) await page.mouse.wheel(0, turn % 2 === 0 ? 1500 : -700);
  await page.locator('#cell-drift').scrollIntoViewIfNeeded();
  await page.locator('#cell-drift .sentence button.blank').first().click();
  await page.keyboard.type('412', { delay: 20 });
  await page.keyboard.press('Escape');
}

test.each([
  [10_000, 100],
  [1_000_000, 1500],
])(
  '%d readings on the page: change to repaint (target %d ms), typing and scrolling under 50 ms',
  async (rows, target) => {
    const { page } = await watchPage(browser, server.address);
    const opened = await openFleet(page, rows);
    const begun = Date.now();
    await until('all is calculated', () => finished(page), 900);
    const finishedIn = Date.now() - begun + opened.toRows;
    const quiet = await longestTask(browser, page, () => typeAndScroll(page));
    const times: number[] = [];
    // Whom to raise is judged by the least chance of leaving tolerance; the days ahead ask every lane anew.
    for (const chance of [41, 57, 63, 44, 52]) times.push(await timeOfChange(page, 'raise', chance));
    const ahead = await timeOfChange(page, 'drift', 400);
    // A change and, while it is calculated, typing and scrolling.
    await page.locator('#cell-drift .sentence button.blank').first().click();
    await page.locator('#cell-drift .entry input').fill('777');
    const busy = await longestTask(browser, page, async () => {
      await page.keyboard.press('Enter');
      await typeAndScroll(page);
    });
    times.sort((a, b) => a - b);
    const ms = (value: number): string => value.toFixed(0);
    const task = ({ wall, processor }: LongestTask): string => `${ms(wall)} (${ms(processor)} of processor)`;
    console.log(
      `${rows} readings, ms: first rows ${ms(opened.toRows)} (target 6000 for a million), longest task meanwhile ${task(opened.longest)} (target 100); all finished ${ms(finishedIn)}; ` +
        `least chance of leaving tolerance to repaint median ${ms(times[2])}, slowest ${ms(times[4])} (target ${target}); days ahead to repaint ${ms(ahead)}; ` +
        `typing and scrolling: longest task ${task(quiet)} at rest, ${task(busy)} while calculating (target 50)`,
    );
    expect(times.every(Number.isFinite)).toBe(true);
    expect(opened.toRows).toBeGreaterThan(0);
    await page.close();
  },
);
