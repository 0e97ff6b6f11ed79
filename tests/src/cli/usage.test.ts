import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(new Map());
writeFileSync(join(desk.folder, 'r.csv'), 'unit,taken_at,o2_pct\nB-07,2025-03-01,5\n');
writeFileSync(join(desk.folder, 'empty.csv'), '');
writeFileSync(join(desk.folder, 'list.json'), '[1, 2');
mkdirSync(join(desk.folder, 'none'));
writeFileSync(join(desk.folder, 'none', 'words.txt'), 'no table at all\n');
const before = desk.contents();
afterAll(() => desk.clear());

const REVIEW = ['review', '--readings', 'r.csv', '--register', 'r.csv', '--out', 'o'];

describe('a command that cannot be carried out ends with code 2, one line on stderr and no file', () => {
  test.each<[string, readonly string[], RegExp]>([
    ['no command', [], /review, calculate/],
    ['an unknown command', ['revue'], /"revue".*review/],
    ['an unknown option', [...REVIEW, '--colour', 'red'], /--colour.*--readings/],
    ['a word before the options', ['review', 'r.csv'], /"r\.csv"/],
    ['no readings', ['review', '--register', 'r.csv', '--out', 'o'], /--readings is missing.*npm run/],
    ['no folder for the results', ['review', '--readings', 'r.csv', '--register', 'r.csv'], /--out is missing/],
    ['an option without its value', [...REVIEW, '--as-of'], /--as-of has nothing after it/],
    ['an option given twice', [...REVIEW, '--out', 'p'], /--out is given twice/],
    [
      'two values for one',
      ['review', '--readings', 'r.csv', '--register', 'r.csv', '--out', 'o', 'p'],
      /one value.*"p"/,
    ],
    ['a day that is none', [...REVIEW, '--as-of', '2026-02-30'], /"2026-02-30".*YYYY-MM-DD|YYYY-MM-DD.*"2026-02-30"/],
    ['a horizon that is no number', [...REVIEW, '--horizon', 'year'], /"year"/],
    ['a horizon of nothing', [...REVIEW, '--horizon', '0'], /"0"/],
    ['an order of dates that is none', [...REVIEW, '--date-order', 'ydm'], /dmy, mdy, ymd.*"ydm"/],
    ['a state that is none', [...REVIEW, '--single-reading', 'trial'], /as_found, as_left.*"trial"/],
    ['a tier that is none', [...REVIEW, '--fail-on', 'danger'], /safety.*"danger"/],
    [
      'a missing file',
      ['review', '--readings', 'gone.csv', '--register', 'r.csv', '--out', 'o'],
      /^gone\.csv: there is no such file/,
    ],
    ['a folder', ['review', '--readings', 'r.csv', '--register', '.', '--out', 'o'], /^\. is a folder/],
    [
      'a folder without exports',
      ['review', '--readings', 'none', '--register', 'r.csv', '--out', 'o'],
      /^none is a folder without any table/,
    ],
    ['a file below a file', ['review', '--readings', 'r.csv/x', '--register', 'r.csv', '--out', 'o'], /no such file/],
    [
      'an empty file',
      ['review', '--readings', 'empty.csv', '--register', 'r.csv', '--out', 'o'],
      /^empty\.csv is empty/,
    ],
    ['a profile that is no JSON', [...REVIEW, '--profile', 'list.json'], /^list\.json is no complete JSON/],
    [
      'a file where the folder should be',
      ['review', '--readings', 'r.csv', '--register', 'r.csv', '--out', 'r.csv'],
      /^r\.csv is a file/,
    ],
    [
      'a folder that cannot be made',
      ['review', '--readings', 'r.csv', '--register', 'r.csv', '--out', 'r.csv/o'],
      /^r\.csv\/o cannot be written/,
    ],
    ['no notebook', ['calculate', '--out', 'o'], /no file is given/],
    ['two notebooks', ['calculate', 'a.json', 'b.json', '--out', 'o'], /one at a time/],
    ['a notebook that is none', ['calculate', 'list.json', '--out', 'o'], /^list\.json is not a notebook/],
    ['a notebook that is not there', ['calculate', 'gone.json', '--out', 'o'], /^gone\.json: there is no such file/],
    ['nothing to check', ['check'], /no file is given/],
    ['a file to check that is not there', ['check', 'gone.csv'], /^gone\.csv/],
  ])('%s', async (_, words, line) => {
    const { code, err, out } = await desk.type(...words);
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(line);
    expect(err[0]).not.toMatch(/\n|Error|undefined|\bat .*:\d+/);
    expect(out).toEqual([]);
    expect(code).toBe(2);
    expect(desk.contents()).toEqual(before);
  });
});
