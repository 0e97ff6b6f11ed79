import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(catalogue);
afterAll(() => desk.clear());
const put = (name: string, text: string): void => writeFileSync(join(desk.folder, name), text);
const cell = (name: string, kind: string, parameters: object = {}) => ({ name, kind, parameters });
const register = cell('register', 'register', { files: ['g.csv'] });
const readings = cell('readings', 'readings', { files: ['r.csv'] });
const notebook = (cells: readonly object[], more: object = {}): string =>
  JSON.stringify({
    format: 'between-visits-notebook',
    version: 1,
    title: 'Fleet',
    as_of: '2026-03-31',
    settings: {},
    data: [
      { key: 'r.csv', name: 'r.csv', size: 1, hash: '1'.repeat(64) },
      { key: 'g.csv', name: 'g.csv', size: 1, hash: '2'.repeat(64) },
    ],
    cells,
    ...more,
  });
const good = notebook([register, readings, cell('derive', 'derive')]);

beforeAll(() => {
  put('r.csv', 'unit,taken_at,fire,state,o2_pct,co_ppm\nB-07,2025-01-10,high,as_found,5,20\n');
  put('g.csv', 'unit,fuel\nB-07,natural_gas\n');
});

const calculate = async (name: string, text: string) => {
  put(`${name}.json`, text);
  return desk.type('calculate', `${name}.json`, '--out', name);
};
const wrote = (name: string, file: string): boolean => existsSync(join(desk.folder, name, file));

describe('a notebook that is none', () => {
  test.each<[string, string, RegExp]>([
    ['truncated', good.slice(0, -40), /truncated\.json.*no complete JSON/],
    ['other', '{"rows":[]}', /other\.json.*format/],
    ['table', 'unit,taken_at\nB-07,2025-01-10\n', /table\.json.*no complete JSON/],
    ['newer', notebook([], { version: 2 }), /newer\.json.*newer version/],
    ['twice', notebook([register, readings, cell('readings', 'note')]), /twice\.json.*two cells are named "readings"/],
    ['polluted', good.replace('"settings":{}', '"settings":{"__proto__":{"seed":7}}'), /polluted\.json.*__proto__/],
    [
      'polluted-parameter',
      good.replace('"files":["g.csv"]', '"files":["g.csv"],"__proto__":{"register":"x"}'),
      /polluted-parameter\.json.*__proto__/,
    ],
  ])('%s: one sentence, exit code 2, nothing written', async (name, text, sentence) => {
    const { code, out, err } = await calculate(name, text);
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(sentence);
    expect([code, out]).toEqual([2, []]);
    expect(wrote(name, '')).toBe(false);
    expect(({} as { seed?: unknown }).seed).toBeUndefined();
    // Every other command that reads notebooks says the same.
    for (const words of [
      ['merge', `${name}.json`, `${name}.json`, '--out', 'merged.json'],
      ['compare', `${name}.json`, `${name}.json`],
    ])
      expect(await desk.type(...words)).toMatchObject({ code: 2, err: [expect.stringMatching(sentence)] });
    expect(wrote('merged.json', '')).toBe(false);
  });
});

describe('a cell that cannot be calculated leaves the others alone', () => {
  test('of an unknown kind', async () => {
    const strange = cell('rings', 'tree-rings', { width: 3 });
    const { code, err } = await calculate('unknown', notebook([register, readings, strange, cell('derive', 'derive')]));
    expect(code).toBe(3);
    expect(err.join('\n')).toMatch(/rings.*tree-rings/);
    expect(wrote('unknown', 'derived.csv')).toBe(true);
    // It is kept as it is when the notebook is written again.
    put('again.json', readFileSync(join(desk.folder, 'unknown.json'), 'utf8'));
    await desk.type('merge', 'unknown.json', 'again.json', '--out', 'kept.json');
    const kept = JSON.parse(readFileSync(join(desk.folder, 'kept.json'), 'utf8')) as { cells: object[] };
    expect(kept.cells).toContainEqual(strange);
  });

  test('with 10 MB in a note', async () => {
    const heavy = cell('note', 'note', { text: 'x'.repeat(10_000_000) });
    const { code, err } = await calculate('heavy', notebook([register, readings, heavy]));
    expect(code).toBe(3);
    expect(err.join('\n')).toMatch(/note.*10/);
    expect(err.join('\n').length).toBeLessThan(2000);
    expect(wrote('heavy', 'accepted.csv')).toBe(true);
  });

  test('with fields that are called as objects’ own are', async () => {
    const odd = JSON.parse('{"constructor":{"prototype":{"polluted":1}},"toString":"x","hasOwnProperty":0}') as object;
    const plain = [register, readings, { ...cell('note', 'note', { text: 'a' }), ...odd }];
    expect((await calculate('odd', notebook(plain, odd))).code).toBe(0);
    put('even.json', notebook([register, readings, cell('note', 'note', { text: 'a' })]));
    const merged = await desk.type('merge', 'odd.json', 'even.json', '--out', 'odd-even.json');
    expect([merged.code, merged.err]).toEqual([0, []]);
    expect(JSON.parse(readFileSync(join(desk.folder, 'odd-even.json'), 'utf8'))).toMatchObject(odd);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
    expect((await desk.type('compare', 'even.json', 'odd.json')).out.join('\n')).not.toContain('native code');
  });
});

test('notebooks of two fleets are not merged, and nothing is lost', async () => {
  put('here.json', good);
  put('there.json', good.replaceAll('1'.repeat(64), '3'.repeat(64)).replaceAll('2'.repeat(64), '4'.repeat(64)));
  put('both.json', 'what stood there before');
  const { code, err } = await desk.type('merge', 'here.json', 'there.json', '--out', 'both.json');
  expect(code).toBe(2);
  expect(err).toHaveLength(1);
  expect(err[0]).toMatch(/different fleets|no data file in common/);
  expect(readFileSync(join(desk.folder, 'both.json'), 'utf8')).toBe('what stood there before');
  expect(desk.contents().filter((name) => name.includes('unfinished'))).toEqual([]);
});
