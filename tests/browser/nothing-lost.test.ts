import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { csv, heading, json, openFiles, SMALL } from './own-files.ts';
import { finished, servedPage } from './served-page.ts';
import { until } from './watch-page.ts';

const served = servedPage();

const READINGS = 'unit,taken_at,fire,state,o2_pct\nB-07,2025-01-10,high,as_found,5\n';

async function writeNote(page: Page, words: string): Promise<void> {
  await page
    .locator('.strip:has(h2:text-is("memo")) button.blank, .strip:has(h2:text-is("note")) button.blank')
    .click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
  await until('it is written', async () =>
    /follow|Nothing else/.test((await page.locator('.said').textContent()) ?? ''),
  );
}

/** Changes are kept half a second after they are made. */
const kept = (page: Page, words: string): Promise<void> =>
  until('it is kept', () =>
    page.evaluate(
      (wanted) =>
        new Promise<boolean>((resolve) => {
          const opening = indexedDB.open('between-visits');
          opening.onerror = () => resolve(false);
          opening.onsuccess = () => {
            const { result } = opening;
            if (!result.objectStoreNames.contains('kept')) return resolve(false);
            const asking = result.transaction('kept').objectStore('kept').getAll();
            asking.onsuccess = () => {
              result.close();
              resolve(asking.result.some((value: unknown) => typeof value === 'string' && value.includes(wanted)));
            };
          };
        }),
      words,
    ),
  );

describe('what is not saved', () => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await served.browser.newContext({ viewport: { width: 1440, height: 900 } });
  });
  afterAll(() => context?.close());

  test('an own notebook, its data and the change made in it come back after a reload', async () => {
    const page = await context.newPage();
    await page.goto(served.address);
    await openFiles(page, [json('n.json', SMALL), csv('r.csv', READINGS)]);
    await until('it is open', async () => (await heading(page)).includes('Three cells'));
    await writeNote(page, 'Do not forget the west stack.');
    await kept(page, 'west stack');
    await page.reload();
    const offer = page.locator('.kept li');
    await until('it is offered', async () => (await offer.count()) === 1);
    expect(await offer.textContent()).toMatch(/Three cells, last changed today .* not saved .* 1 data file is kept/s);
    await offer.getByRole('button', { name: /^Open it again/ }).click();
    await until('it is open again', async () => (await heading(page)).includes('Three cells'));
    await until('with its note', async () =>
      ((await page.locator('#cell-memo .sentence').textContent()) ?? '').includes('west stack'),
    );
    await until('and its readings', async () =>
      /^1 reading/.test((await page.locator('#cell-readings .answer').textContent()) ?? ''),
    );
    expect(await page.locator('.kept').count()).toBe(0);
    // What is open here is not offered in another window.
    const second = await context.newPage();
    await second.goto(served.address);
    await until('the second is calculated', () => finished(second));
    expect(await second.locator('.kept li').count()).toBe(0);
    await second.close();
    await page.close();
  });

  test('what somebody opens again while the sample is still on its way stays open when that comes', async () => {
    const page = await context.newPage();
    await page.goto(served.address);
    await openFiles(page, [json('n.json', SMALL), csv('r.csv', READINGS)]);
    await until('it is open', async () => (await heading(page)).includes('Three cells'));
    await writeNote(page, 'The south stack too.');
    await kept(page, 'south stack');
    let letGo = (): void => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await page.route('**/register*.csv', async (route) => {
      await held;
      await route.continue();
    });
    await page.reload({ waitUntil: 'commit' });
    await page
      .locator('.kept li')
      .getByRole('button', { name: /^Open it again/ })
      .click();
    await until('it is open again', async () => (await heading(page)).includes('Three cells'));
    const came = page.waitForResponse(/register.*\.csv/);
    letGo();
    await came;
    // Time in which the sample would have been opened.
    await page.waitForTimeout(1500);
    expect(await heading(page)).toContain('Three cells');
    expect(await page.locator('#cell-raise').count()).toBe(0);
    await page.close();
  });

  test('after a window is gone without a word it is offered, and dropped only when that is said twice', async () => {
    const page = await context.newPage();
    await page.goto(served.address);
    const offer = page.locator('.kept li');
    await until('it is offered', async () => (await offer.count()) === 1);
    await offer.getByRole('button', { name: /^Drop it/ }).click();
    await offer.getByRole('button', { name: 'Keep it' }).click();
    await offer.getByRole('button', { name: /^Drop it/ }).click();
    await offer.getByRole('button', { name: 'Drop it for good' }).click();
    await until('it is gone', async () => (await page.locator('.kept').count()) === 0);
    await page.reload();
    await until('the sample is calculated', () => finished(page));
    expect(await page.locator('.kept').count()).toBe(0);
    await page.close();
  });

  test('the sample is kept from its first change on, and not before', async () => {
    const page = await context.newPage();
    await page.goto(served.address);
    await until('the sample is calculated', () => finished(page));
    await page.reload();
    await until('the sample is calculated', () => finished(page));
    expect(await page.locator('.kept').count()).toBe(0);
    await writeNote(page, 'Ask for the key.');
    await kept(page, 'Ask for the key.');
    await page.reload();
    await until('it is offered', async () => (await page.locator('.kept li').count()) === 1);
    await page.close();
  });
});

describe('files that are not what they should be', () => {
  test('a missing data file is found under any name; one with another content is said to be, and taken for good as an edit', async () => {
    const { page, troubles } = await served.open();
    await openFiles(page, [json('n.json', SMALL)]);
    const calls = page.locator('.calls');
    await until('it is said', async () => /r\.csv is not at hand here/.test((await calls.textContent()) ?? ''));
    // The cell of an unknown kind is shown as such and kept; the rest works.
    expect(await page.locator('#cell-weather .trouble').textContent()).toMatch(
      /kind "weather-station", which this program does not know; it is kept/,
    );
    expect(await page.locator('#cell-memo .sentence').textContent()).toMatch(/Seen\./);
    await calls.getByLabel(/^Find the file/).setInputFiles([csv('export of today.csv', READINGS)]);
    await until('it is read, and said to have changed', async () =>
      /r\.csv is not as it was when this notebook was saved/.test((await calls.textContent()) ?? ''),
    );
    await until('it is calculated', async () =>
      /^1 reading/.test((await page.locator('#cell-readings .answer').textContent()) ?? ''),
    );
    await calls.getByRole('button', { name: /^Use it as it is now/ }).click();
    await until('it is settled', async () => (await page.locator('.data-call').count()) === 0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await until('it is open again', async () => (await page.locator('.data-call').count()) === 1);
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save notebook' }).click();
    const saved = JSON.parse(readFileSync((await (await saving).path()) as string, 'utf8')) as typeof SMALL;
    expect(saved.cells[1]).toEqual(SMALL.cells[1]);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('a notebook that is cut off, of a newer format or unsound is refused in one sentence, and what is open stays open', async () => {
    const { page } = await served.open();
    await until('the sample is calculated', () => finished(page));
    const before = await heading(page);
    const text = JSON.stringify(SMALL);
    for (const [name, wrong, said] of [
      ['cut.json', text.slice(0, 300), /cut\.json is not a notebook: it is no complete JSON text/],
      ['new.json', text.replace('"version":1', '"version":99'), /saved by a newer version .* its format version is 99/],
      ['twice.json', text.replace('"weather"', '"memo"'), /two cells are named "memo"/],
      ['proto.json', text.replace('"mast":7', '"__proto__":{"a":1}'), /reserved name "__proto__"/],
    ] as const) {
      await openFiles(page, [json(name, wrong)]);
      await until('it is refused', async () =>
        said.test((await page.locator('.tray .fault').allTextContents()).join()),
      );
      expect(await heading(page)).toBe(before);
      await page.getByRole('button', { name: 'Back to the notebook' }).click();
      expect(await page.locator('.main .fault, .news.fault').count()).toBe(0);
    }
    expect(await finished(page)).toBe(true);
    await page.close();
  });

  test('a file that does not tell what it holds is asked about, and one of another kind refused', async () => {
    const { page } = await served.open();
    await page.getByRole('button', { name: 'Open your own files' }).click();
    await page
      .locator('.tray input[type=file]:not([webkitdirectory])')
      .setInputFiles([csv('junk.csv', 'a;b\n1;2\n'), csv('other.json', '{"rows":[]}'), csv('scan.pdf', '%PDF-1.7\n')]);
    await until('the last is refused', async () => (await page.locator('.tray .fault').count()) === 3);
    const said = (await page.locator('.tray .fault').allTextContents()).join('\n');
    expect(said).toMatch(/other\.json is JSON, and no notebook/);
    expect(said).toMatch(/scan\.pdf is a PDF document/);
    expect(said).toMatch(/Nothing in the first lines of junk\.csv tells what it holds/);
    expect(await page.locator('.tray select').inputValue()).toBe('');
    expect(await page.getByRole('button', { name: 'Open these files' }).isDisabled()).toBe(true);
    await page.close();
  });
});
