import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { buildPage, removePage, serveAt } from '../src/app/built-page.ts';
import { launchBrowser } from './find-browser.ts';
import { type WatchedPage, watchPage } from './watch-page.ts';

export interface ServedPage {
  /** Both are there once the tests of the file run. */
  readonly browser: Browser;
  readonly address: string;
  /** Opens the page in a window of its own. */
  open(query?: string, options?: BrowserContextOptions): Promise<WatchedPage>;
}

/** A page for the tests of one file, served below a path and opened in one browser; both end with the tests. */
export function servedPage(path = '/', build: () => string | Promise<string> = buildPage): ServedPage {
  let [folder, address] = ['', ''];
  let browser: Browser | undefined;
  let close = (): void => {};
  beforeAll(async () => {
    folder = await build();
    ({ address, close } = await serveAt(folder, path));
    browser = await launchBrowser();
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
    close();
    removePage(folder);
  });
  const launched = (): Browser => {
    if (!browser) throw new Error('the browser is there once the tests run');
    return browser;
  };
  return {
    get browser() {
      return launched();
    },
    get address() {
      return address;
    },
    open: (query = '', options = {}) => watchPage(launched(), `${address}${query}`, options),
  };
}

/** Every cell has finished: no error, no question, nothing at work. */
export const finished = (page: Page): Promise<boolean> =>
  page.evaluate(() => /^(\d+) of \1 cells finished$/.test(document.querySelector('.flow .summary')?.textContent ?? ''));
