import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { readDocument } from '../../../src/notebook/read-document.ts';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(catalogue);
afterAll(() => desk.clear());
const put = (name: string, value: unknown): void =>
  writeFileSync(join(desk.folder, name), typeof value === 'string' ? value : JSON.stringify(value));
const hash = '1'.repeat(64);
const notebook = (text: string, more: readonly object[] = []) => ({
  format: 'between-visits-notebook',
  version: 1,
  title: 'Fleet',
  as_of: '2026-03-31',
  settings: {},
  data: [
    { key: 'r.csv', name: 'r.csv', size: 1, hash },
    { key: 'g.csv', name: 'g.csv', size: 1, hash: '2'.repeat(64) },
  ],
  cells: [
    { name: 'register', kind: 'register', parameters: { files: ['g.csv'] } },
    { name: 'readings', kind: 'readings', parameters: { files: ['r.csv'] } },
    ...['derive', 'drift', 'supply', 'instruments', 'raise'].map((kind) => ({ name: kind, kind, parameters: {} })),
    { name: 'note', kind: 'note', parameters: { text } },
    ...more,
  ],
});
beforeAll(() => {
  put(
    'r.csv',
    'unit,taken_at,fire,state,o2_pct,co_ppm\nB-07,2025-01-10,high,as_found,5,20\nB-07,2026-01-10,high,as_found,5,900\n',
  );
  put('g.csv', 'unit,fuel\nB-07,natural_gas\n');
  put('one.json', notebook('Here.', [{ name: 'mine', kind: 'note', parameters: { text: 'Mine.' } }]));
  put('two.json', notebook('Here.', [{ name: 'theirs', kind: 'note', parameters: { text: 'Theirs.' } }]));
  put('other.json', notebook('There.'));
  const elsewhere = notebook('Elsewhere.');
  put('elsewhere.json', { ...elsewhere, data: [{ ...elsewhere.data[0], hash: '3'.repeat(64) }] });
});

describe('merge', () => {
  test('makes two notebooks one', async () => {
    const { code, err } = await desk.type('merge', 'one.json', 'two.json', '--out', 'all.json');
    expect([code, err]).toEqual([0, []]);
    const read = readDocument('all.json', readFileSync(join(desk.folder, 'all.json'), 'utf8'));
    expect(read.status === 'value' && read.value.cells.slice(-2).map(({ name }) => name)).toEqual(['mine', 'theirs']);
  });

  test('asks where they contradict each other, and writes nothing until it is said', async () => {
    const asked = await desk.type('merge', 'one.json', 'other.json', '--out', 'no.json');
    expect(asked.code).toBe(2);
    expect(asked.err).toEqual([expect.stringMatching(/1 place differs.*cell note.*--keep first or --keep second/)]);
    expect(desk.contents()).not.toContain('no.json');
    const kept = await desk.type('merge', 'one.json', 'other.json', '--out', 'kept.json', '--keep', 'second');
    expect(kept.code).toBe(0);
    expect(readFileSync(join(desk.folder, 'kept.json'), 'utf8')).toContain('There.');
  });

  test.each<[string, readonly string[], RegExp]>([
    ['two fleets', ['one.json', 'elsewhere.json', '--out', 'no.json'], /different fleets/],
    ['one notebook', ['one.json', '--out', 'no.json'], /at least two/],
    ['no target', ['one.json', 'two.json'], /--out is missing/],
    ['a target that cannot be', ['one.json', 'two.json', '--out', 'gone/no.json'], /gone\/no\.json cannot be written/],
  ])('%s: one sentence, code 2, nothing written', async (_, words, line) => {
    const before = desk.contents();
    const { code, err } = await desk.type('merge', ...words);
    expect([code, err.length]).toEqual([2, 1]);
    expect(err[0]).toMatch(line);
    expect(desk.contents()).toEqual(before);
  });
});

describe('compare', () => {
  test('two days of one notebook: who is newly raised', async () => {
    const { code, out } = await desk.type('compare', 'other.json', '--from', '2025-06-30', '--to', '2026-03-31');
    expect(code).toBe(0);
    expect(out[0]).toBe('as_of was "2025-06-30", is "2026-03-31"');
    expect(out.slice(1).join('\n')).toMatch(/newly raised: B-07 \(.*high: co high/);
  });

  test('two notebooks: what was decided otherwise', async () => {
    const { code, out } = await desk.type('compare', 'one.json', 'other.json');
    expect(code).toBe(0);
    expect(out.slice(0, 2)).toEqual(['cell removed: mine (note)', 'note: text was "Here.", is "There."']);
    expect(out[2]).toMatch(/^The same 1 unit is raised/);
  });

  test('one notebook without two days is refused', async () => {
    expect(await desk.type('compare', 'one.json', '--to', '2026-03-31')).toMatchObject({
      code: 2,
      err: [expect.stringMatching(/--from and --to/)],
    });
  });
});
