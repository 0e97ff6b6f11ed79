import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const SYSTEM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];
const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The browser that CHROMIUM_PATH names, else a system Chromium or Chrome, else the one that comes as a package. */
export async function launchBrowser(): Promise<Browser> {
  const named = process.env['CHROMIUM_PATH'];
  const found = named ?? SYSTEM.find((path) => existsSync(path));
  if (found !== undefined) return chromium.launch({ executablePath: found, args: QUIET });
  const { default: carried } = await import('@sparticuz/chromium');
  return chromium.launch({ executablePath: await carried.executablePath(), args: [...carried.args, ...QUIET] });
}
