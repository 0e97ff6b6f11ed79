import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeFleet } from '../bench/fleet.ts';
import { buildPage, ROOT } from '../src/app/built-page.ts';
import { calculateInBrowser } from '../src/app/calculate-in-browser.ts';

const UNITS = 2000;
const ROWS_PER_UNIT = 24;
const folder = mkdtempSync(join(tmpdir(), 'between-visits-same-'));
const fleet = makeFleet(UNITS * ROWS_PER_UNIT, 7);
let page = '';
beforeAll(() => {
  page = buildPage();
  writeFileSync(join(folder, 'readings.csv'), fleet.readings);
  writeFileSync(join(folder, 'register.csv'), fleet.register);
  writeFileSync(join(folder, 'notebook.json'), notebook());
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The notebook of a review over the fleet. */
function notebook(): string {
  const data = ['register.csv', 'readings.csv'].map((name) => ({ key: name, name, size: 1, hash: '' }));
  const cells = [
    { name: 'register', kind: 'register', parameters: { files: ['register.csv'] } },
    { name: 'readings', kind: 'readings', parameters: { files: ['readings.csv'] } },
    ...['derive', 'drift', 'supply', 'instruments', 'raise', 'savings'].map((kind) => ({
      name: kind,
      kind,
      parameters: {},
    })),
  ];
  const head = { format: 'between-visits-notebook', version: 1, title: 'Fleet', as_of: '2026-03-31' };
  return JSON.stringify({ ...head, settings: {}, data, cells });
}

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

function onCommandLine(out: string, helpers: string): Record<string, string> {
  const words = ['calculate', 'notebook.json', '--out', out];
  const done = spawnSync(process.execPath, [join(ROOT, 'dist/cli/main.js'), ...words], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, BETWEEN_VISITS_HELPERS: helpers },
  });
  expect([done.status, done.stderr]).toEqual([0, '']);
  const names = readdirSync(join(folder, out));
  return Object.fromEntries(names.map((name) => [name, hashOf(readFileSync(join(folder, out, name)))]));
}

describe(`every file of a fleet of ${UNITS} units has the same bytes`, () => {
  const alone = (): Record<string, string> => onCommandLine('alone', '0');

  test('with one processor and with two', () => {
    const expected = alone();
    expect(Object.keys(expected).length).toBeGreaterThan(8);
    expect(onCommandLine('two', '2')).toEqual(expected);
    expect(onCommandLine('five', '5')).toEqual(expected);
  });

  test('on the command line and in the page', async () => {
    const files = Object.fromEntries(
      ['register.csv', 'readings.csv'].map((name) => [name, readFileSync(join(folder, name)).toString('base64')]),
    );
    expect(await calculateInBrowser(page, notebook(), files)).toEqual(alone());
  });
});
