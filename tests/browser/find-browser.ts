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

/** Meant for one page in one process: a second page ends the browser, and a page's policy is not held. */
const UNFIT = ['--single-process', '--no-zygote', '--disable-web-security'];

/** The browser that CHROMIUM_PATH names, else a system Chromium or Chrome, else the one that comes as a package. */
export async function launchBrowser(): Promise<Browser> {
  const named = process.env['CHROMIUM_PATH'];
  const found = named || SYSTEM.find((path) => existsSync(path));
  if (found) return chromium.launch({ executablePath: found, args: QUIET });
  const { default: carried } = await import('@sparticuz/chromium');
  const args = carried.args.filter((argument) => !UNFIT.includes(argument));
  return chromium.launch({ executablePath: await carried.executablePath(), args: [...args, ...QUIET] });
}
