import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(catalogue);
const put = (name: string, text: string | Buffer): void => writeFileSync(join(desk.folder, name), text);
const got = (name: string): string => readFileSync(join(desk.folder, name), 'utf8');
afterAll(() => desk.clear());

/** One unit whose CO stands open, one in order, and one row of each fault that sets a row aside. */
const READINGS = `unit,taken_at,fire,state,o2_pct,co_ppm
B-07,2025-01-10,high,as_found,5.1,900
B-08,2025-01-10,high,as_found,5.0,20
B-99,2025-01-10,high,as_found,5.0,20
B-08,2031-01-10,high,as_found,5.0,20
B-08,2025-13-10,high,as_found,5.0,20
B-08,2025-01-11,high,as_found,five,20
B-08,2025-01-10,high,as_found,5.0,20
`;
beforeAll(() => {
  put('r.csv', READINGS);
  put('g.csv', 'unit,fuel,o2_high_target_pct,o2_high_tolerance_pct\nB-07,natural_gas,5,0.5\nB-08,natural_gas,5,0.5\n');
  put('no-unit.csv', 'site,fuel\nx,natural_gas\n');
  put('no-rows.csv', 'unit,fuel\n');
  put('no-column.csv', 'a,b\n1,2\n');
  put('strange-fuel.csv', 'unit,fuel\nB-07,kryptonite\n');
  put('dates.csv', 'unit,taken_at,fire,state,o2_pct\nB-07,03/04/2025,high,as_found,5\n');
  put('binary.csv', Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 37 + 11) % 256)));
});
beforeEach(() => rmSync(join(desk.folder, 'o'), { recursive: true, force: true }));

const review = (...more: string[]) =>
  desk.type('review', '--readings', 'r.csv', '--register', 'g.csv', '--out', 'o', '--as-of', '2026-03-31', ...more);

const FILES = [
  'accepted.csv',
  'account.json',
  'checks.csv',
  'derived.csv',
  'drift.csv',
  'instruments.csv',
  'raised.csv',
  'report.html',
  'savings.csv',
  'set-aside.csv',
  'supply.csv',
];

describe('review', () => {
  test('without a register: the units are those of the readings, nobody is a stranger, and it says what is then assumed', async () => {
    const { code, err, out } = await desk.type('review', '--readings', 'r.csv', '--out', 'o', '--as-of', '2026-03-31');
    expect(err).toEqual([]);
    expect(code).toBe(0);
    const printed = out.join('\n');
    expect(printed).toContain('No register: the units are those that the readings name.');
    expect(printed).not.toContain('not in the register');
    expect(printed).toMatch(/of 3 units raised/);
    expect(got('o/raised.csv')).toMatch(/^1,B-07,.*co_high,safety/m);
    expect(got('o/report.html')).toContain('Without a register nothing is known of targets');
    // Nobody read a unit for 18 months and more: known from the readings alone.
    const later = await desk.type('review', '--readings', 'r.csv', '--out', 'o', '--as-of', '2026-12-31');
    expect(later.code).toBe(0);
    expect(got('o/raised.csv')).toMatch(/^\d,B-99,.*,no_data,data/m);
  });

  test('writes every file of the contract, every reading accounted for, and ends with 0', async () => {
    const { code, err, out } = await review();
    expect(err).toEqual([]);
    expect(code).toBe(0);
    expect(desk.contents().filter((path) => path.startsWith('o/'))).toEqual(FILES.map((name) => `o/${name}`));
    const { total } = JSON.parse(got('o/account.json')) as { total: Record<string, number> };
    expect(total).toEqual({ rows_read: 7, accepted: 3, set_aside: 3, duplicates: 1 });
    expect(
      got('o/set-aside.csv')
        .split('\r\n')
        .slice(1, 4)
        .map((line) => line.slice(0, 8)),
    ).toEqual(['r.csv,5,', 'r.csv,6,', 'r.csv,7,']);
    expect(got('o/raised.csv').split('\r\n')[1]).toMatch(/^1,B-07,natural_gas,high,co_high,safety,/);
    expect(out.some((line) => line.startsWith('raise: '))).toBe(true);
  });

  test('the same command twice gives the same bytes', async () => {
    await review();
    const first = FILES.map((name) => got(`o/${name}`));
    await review();
    expect(FILES.map((name) => got(`o/${name}`))).toEqual(first);
    for (const text of first) expect(text.charCodeAt(0)).not.toBe(0xfeff);
  });

  test('--fail-on ends with 4 when a unit is raised in that tier, after writing everything', async () => {
    const { code, err } = await review('--fail-on', 'safety');
    expect(code).toBe(4);
    expect(err).toEqual(['--fail-on safety: 1 unit is raised there; see raised.csv.']);
    expect(desk.contents()).toContain('o/raised.csv');
    put('calm.csv', 'unit,taken_at,fire,state,o2_pct,co_ppm\nB-08,2025-12-10,high,as_found,5.0,20\n');
    const calm = ['--register', 'g.csv', '--out', 'o', '--as-of', '2026-03-31', '--fail-on', 'safety'];
    expect((await desk.type('review', '--readings', 'calm.csv', ...calm)).code).toBe(0);
  });

  test.each<[string, readonly string[], RegExp]>([
    ['a binary file', ['--readings', 'binary.csv', '--register', 'g.csv'], /binary\.csv/],
    [
      'readings without a usable column',
      ['--readings', 'no-column.csv', '--register', 'g.csv'],
      /no-column\.csv.*"a,b"/,
    ],
    ['a register without units', ['--readings', 'r.csv', '--register', 'no-unit.csv'], /no-unit\.csv.*unit/],
    ['a register without rows', ['--readings', 'r.csv', '--register', 'no-rows.csv'], /no-rows\.csv/],
    [
      'a fuel that nobody knows, in the register',
      ['--readings', 'r.csv', '--register', 'strange-fuel.csv'],
      /kryptonite/,
    ],
    [
      'a fuel that nobody knows, as an option',
      ['--readings', 'r.csv', '--register', 'g.csv', '--fuel', 'kryptonite'],
      /kryptonite/,
    ],
    ['a question of dates', ['--readings', 'dates.csv', '--register', 'g.csv'], /dates\.csv.*--date-order/],
    [
      'events that are none',
      ['--readings', 'r.csv', '--register', 'g.csv', '--events', 'no-column.csv'],
      /no-column\.csv/,
    ],
    [
      'fuel use that is none',
      ['--readings', 'r.csv', '--register', 'g.csv', '--fuel-use', 'binary.csv'],
      /binary\.csv/,
    ],
  ])('%s: one clear sentence, code 2, nothing written', async (_, words, line) => {
    const { code, err, out } = await desk.type('review', ...words, '--out', 'o', '--as-of', '2026-03-31');
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(line);
    expect(err[0]).not.toMatch(/\n|fault in the program|undefined/);
    expect(out).toEqual([]);
    expect(code).toBe(2);
    expect(desk.contents().filter((path) => path.startsWith('o'))).toEqual([]);
  });

  test('the question is answered by the flag that it names', async () => {
    const words = ['review', '--readings', 'dates.csv', '--register', 'g.csv', '--out', 'o', '--as-of', '2026-03-31'];
    expect((await desk.type(...words, '--date-order', 'dmy')).code).toBe(0);
    expect(got('o/accepted.csv')).toContain('B-07,2025-04-03');
    expect((await desk.type(...words, '--date-order', 'mdy')).code).toBe(0);
    expect(got('o/accepted.csv')).toContain('B-07,2025-03-04');
  });
});

describe('calculate', () => {
  const notebook = (cells: readonly object[], data: readonly object[] = []): string =>
    JSON.stringify({
      format: 'between-visits-notebook',
      version: 1,
      title: 'T',
      as_of: '2026-03-31',
      settings: {},
      data,
      cells,
    });
  const data = [{ key: 'r.csv', name: 'r.csv', size: 1, hash: '' }];
  const readings = { name: 'readings', kind: 'readings', parameters: { files: ['r.csv'], register: '' } };

  test('a cell that cannot be calculated: code 3, its sentence, and the files of the others', async () => {
    put(
      'n.json',
      notebook(
        [
          readings,
          { name: 'odd', kind: 'hologram', parameters: {} },
          { name: 'derive', kind: 'derive', parameters: { register: 'gone' } },
        ],
        data,
      ),
    );
    const { code, err } = await desk.type('calculate', 'n.json', '--out', 'o');
    expect(code).toBe(3);
    expect(err).toHaveLength(2);
    expect(err[0]).toMatch(/^odd.*hologram/);
    expect(err[1]).toMatch(/^derive.*gone/);
    expect(desk.contents()).toContain('o/accepted.csv');
    expect(desk.contents()).not.toContain('o/derived.csv');
  });

  test('a data file that is not beside the notebook is named, with its folder', async () => {
    put('n.json', notebook([readings], [{ key: 'r.csv', name: 'moved.csv', size: 1, hash: '' }]));
    const { code, err } = await desk.type('calculate', 'n.json', '--out', 'o');
    expect([code, err.length]).toEqual([2, 1]);
    expect(err[0]).toMatch(/n\.json.*"moved\.csv".*not in \./);
  });

  test('a data file that has changed is said, and calculated as it is now', async () => {
    put('n.json', notebook([readings], [{ ...data[0], hash: 'a'.repeat(64) }]));
    const { code, err } = await desk.type('calculate', 'n.json', '--out', 'o');
    expect(code).toBe(0);
    expect(err).toEqual([expect.stringContaining('"r.csv"')]);
  });

  test('--as-of looks from another day', async () => {
    put('n.json', notebook([readings], data));
    await desk.type('calculate', 'n.json', '--out', 'o', '--as-of', '2031-12-31');
    expect(got('o/accepted.csv')).toContain('2031-01-10');
  });
});

describe('check', () => {
  test('says what the import would read and set aside, and writes nothing', async () => {
    const before = desk.contents();
    const { code, out } = await desk.type('check', 'r.csv');
    expect(code).toBe(0);
    // Without --as-of the day is 2026-03-31, so that the reading of 2031 is set aside here, too.
    expect(out.join('\n')).toMatch(/^r\.csv: 7 readings proposed; 3 accepted, 3 set aside, 1 duplicate/m);
    expect(out.join('\n')).toMatch(/^ {2}"o2_pct" is o2_pct in % \(100 % sure/m);
    expect(out.join('\n')).toMatch(/r\.csv, line 7: o2_pct/);
    expect(desk.contents()).toEqual(before);
  });

  test('asks what only the user can answer', async () => {
    const { code, err } = await desk.type('check', 'dates.csv');
    expect([code, err.length]).toEqual([2, 1]);
    expect(err[0]).toMatch(/--date-order/);
  });
});
