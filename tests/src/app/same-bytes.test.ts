import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildPage, ROOT, removePage } from './built-page.ts';
import { calculateInBrowser } from './calculate-in-browser.ts';

const out = mkdtempSync(join(tmpdir(), 'between-visits-bytes-'));
let page = '';
beforeAll(() => {
  page = buildPage();
}, 120_000);
afterAll(() => {
  rmSync(out, { recursive: true, force: true });
  removePage(page);
});

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

test('page and command line write the same bytes: every file of the sample campus', async () => {
  const sample = join(ROOT, 'sample-data');
  const notebook = readFileSync(join(sample, 'campus-review.json'), 'utf8');
  const done = spawnSync(
    process.execPath,
    [join(ROOT, 'dist/cli/main.js'), 'calculate', join(sample, 'campus-review.json'), '--out', out],
    {
      encoding: 'utf8',
    },
  );
  expect(done.stderr).toBe('');
  expect(done.status).toBe(0);
  const names = (JSON.parse(notebook) as { data: { name: string }[] }).data.map(({ name }) => name);
  const files = Object.fromEntries(names.map((name) => [name, readFileSync(join(sample, name)).toString('base64')]));
  const written = await calculateInBrowser(page, notebook, files);
  const expected = Object.fromEntries(readdirSync(out).map((name) => [name, hashOf(readFileSync(join(out, name)))]));
  expect(Object.keys(expected).length).toBeGreaterThan(8);
  expect(written).toEqual(expected);
}, 120_000);
