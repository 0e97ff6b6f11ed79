import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page, Worker } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PAGE_POLICY, servePage } from '../../../src/cli/serve-page.ts';
import { launchBrowser } from '../../browser/find-browser.ts';
import { buildPage, removePage, serveAt } from './built-page.ts';

let folder = '';
let browser: Browser;
beforeAll(async () => {
  folder = buildPage();
  browser = await launchBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  removePage(folder);
});

/** A page that gathers whatever the browser refuses or cannot find. */
async function openPage(address: string): Promise<{ page: Page; troubles: string[] }> {
  const page = await browser.newPage();
  const troubles: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  page.on('pageerror', (cause) => troubles.push(cause.message));
  page.on('requestfailed', (request) => troubles.push(`${request.url()} ${request.failure()?.errorText}`));
  page.on('response', (response) => {
    if (response.status() >= 400) troubles.push(`${response.url()} ${response.status()}`);
  });
  await page.goto(address);
  return { page, troubles };
}

/** Whether text can become code there. Asked from a timer, since the tools' own evaluation is let past the policy. */
const generatesCode = (place: Pick<Page, 'evaluate'> | Worker): Promise<boolean> =>
  (place as Page).evaluate(
    () =>
      new Promise<boolean>((resolve) => {
        setTimeout(() => {
          try {
            resolve(new Function('return true')() as boolean);
          } catch {
            resolve(false);
          }
        }, 0);
      }),
  );

describe('the policy of the page', () => {
  test('stands in the page itself, as the command line serves it', () => {
    const html = readFileSync(join(folder, 'index.html'), 'utf8');
    const [, meta] = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(html) ?? [];
    expect(meta).toBe(PAGE_POLICY);
  });

  test('holds below any path of a plain web server, and the worker calculates under it', async () => {
    const server = await serveAt(folder, '/campus/tools/notebook/');
    const { page, troubles } = await openPage(server.address);
    await expect.poll(() => page.workers().length, { timeout: 20_000 }).toBeGreaterThan(0);
    // arquero writes code for its verbs: that must go in the worker, and nowhere else.
    expect(await generatesCode(page.workers()[0])).toBe(true);
    expect(await generatesCode(page)).toBe(false);
    expect(troubles.filter((text) => !/unsafe-eval/.test(text))).toEqual([]);
    await page.close();
    server.close();
  });

  test('holds as a header too, which the worker is not given', async () => {
    const server = await servePage(folder, 0);
    const { port } = server.address() as { port: number };
    const { page, troubles } = await openPage(`http://127.0.0.1:${port}/`);
    await expect.poll(() => page.workers().length, { timeout: 20_000 }).toBeGreaterThan(0);
    expect(await generatesCode(page.workers()[0])).toBe(true);
    expect(await generatesCode(page)).toBe(false);
    expect(troubles.filter((text) => !/unsafe-eval/.test(text))).toEqual([]);
    const answer = await fetch(`http://127.0.0.1:${port}/`);
    expect(answer.headers.get('content-security-policy')).toBe(`${PAGE_POLICY}; frame-ancestors 'none'`);
    await page.close();
    server.close();
  });
});
