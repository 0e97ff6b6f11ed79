import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

export interface WatchedPage {
  readonly page: Page;
  /** What the browser complained of: errors, refusals of the policy, files not found. */
  readonly troubles: string[];
}

/** Opens an address and gathers every complaint of the browser. */
export async function watchPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<WatchedPage> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, ...options });
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

/** Asks again and again until the answer is true; the page's policy forbids waiting inside it. */
export async function until(what: string, ask: () => Promise<boolean>, seconds = 20): Promise<void> {
  const end = Date.now() + seconds * 1000;
  while (!(await ask())) {
    if (Date.now() > end) throw new Error(`waited ${seconds} s in vain: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 40));
  }
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Serious and critical faults by WCAG 2.2 A and AA, as "rule: element". */
export async function seriousFaults(page: Page, within: readonly string[] = ['body']): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async (include) => {
    const { axe } = window as unknown as {
      axe: { run(scope: object, options: object): Promise<{ violations: AxeFault[] }> };
    };
    interface AxeFault {
      readonly id: string;
      readonly impact: string;
      readonly nodes: readonly { readonly target: readonly unknown[]; readonly failureSummary?: string }[];
    }
    const { violations } = await axe.run(
      { include: include.map((part) => [part]) },
      {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        resultTypes: ['violations'],
      },
    );
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes.slice(0, 5).map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary ?? ''}`),
      );
  }, within);
}
