import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(catalogue);
beforeAll(() => {
  writeFileSync(
    join(desk.folder, 'r.csv'),
    'unit,taken_at,fire,state,o2_pct,co_ppm\nB-07,2025-01-10,high,as_found,5,87\nB-07,2025-02-10,high,as_found,7,50\n',
  );
  writeFileSync(join(desk.folder, 'g.csv'), 'unit,fuel\nB-07,natural_gas\n');
});
afterAll(() => desk.clear());

const working = (...more: string[]) => desk.type('working', '--readings', 'r.csv', '--register', 'g.csv', ...more);

test('prints the chain, the numbers put in, the source and the file and line', async () => {
  const { code, out } = await working('--unit', 'B-07', '--column', 'co_air_free_ppm', '--on', '2025-01-10');
  expect(code).toBe(0);
  expect(out).toContain('From r.csv, line 2.');
  expect(out).toContain('  B-07,2025-01-10,high,as_found,5,87');
  expect(out).toContain('  column 6, co_ppm: 87');
  // 87 ppm at 5 % O2 is the worked example of a trade school: 114 ppm (exactly 114.36).
  expect(out).toContain('    = 114.36 ppm');
  expect(out.join('\n')).toContain('87 ppm × 20.9 % / (20.9 % − 5 %)');
  expect(out.join('\n')).toMatch(/Its standard uncertainty is [\d.]+ ppm\./);
});

test('takes the last reading where no day is given', async () => {
  const { out } = await working('--unit', 'B-07', '--column', 'co_air_free_ppm');
  expect(out).toContain('    = 75.18 ppm');
});

test.each(['o2_reference_pct', 'efficiency_net_pct', 'dew_point_C', 'supply_drop_Pa', 'co_at_3pct_o2_ppm'])(
  '%s fits a terminal of 80 columns and tells readings, relations, uncertainty and sources',
  async (column) => {
    writeFileSync(
      join(desk.folder, 'all.csv'),
      'unit,taken_at,fire,state,o2_pct,co2_pct,co2_from,co_ppm,flue_C,air_C,supply_static_Pa,supply_running_Pa,barometer_kPa,note\nB-07,2025-01-10,high,as_found,5,9.1,measured,87,180,15,2466,2217,100.1,a note that is long enough to be folded\n',
    );
    const { code, out } = await desk.type('working', '--readings', 'all.csv', '--unit', 'B-07', '--column', column);
    expect(code).toBe(0);
    expect(out.filter((line) => [...line].length > 80)).toEqual([]);
    expect(out.join('\n')).not.toMatch(/NaN|Infinity|undefined|\[object/);
    for (const head of [/^What goes in:$/, /^The (relation|\d+ relations, one after the other):$/, /^The sources?:$/])
      expect(out.some((line) => head.test(line))).toBe(true);
  },
);

test('what an export leaves open is answered as for review: order of dates, state, profile', async () => {
  writeFileSync(join(desk.folder, 'open.csv'), 'Kessel,Tag,O2,CO\nB-07,3/4/2025,5,87\n');
  writeFileSync(
    join(desk.folder, 'shape.json'),
    JSON.stringify({
      name: 'shape',
      columns: {
        Kessel: { field: 'unit' },
        Tag: { field: 'taken_at' },
        O2: { field: 'o2_pct' },
        CO: { field: 'co_ppm' },
      },
    }),
  );
  const typed = ['working', '--readings', 'open.csv', '--unit', 'B-07', '--column', 'co_air_free_ppm'];
  const answers = ['--profile', 'shape.json', '--date-order', 'dmy', '--single-reading', 'as_left'];
  expect((await desk.type(...typed)).code).toBe(2);
  const { code, out, err } = await desk.type(...typed, ...answers);
  expect(err).toEqual([]);
  expect(code).toBe(0);
  expect(out[2]).toBe('B-07, 2025-04-03, as left, natural gas');
  expect(out).toContain('  column 4, CO: 87');
});

test.each([
  [['--unit', 'B-08', '--column', 'lambda'], 'no reading of unit B-08'],
  [['--unit', 'B-07', '--column', 'lamda'], 'did you mean lambda?'],
  [['--column', 'lambda'], '--unit is missing'],
  [['--unit', 'B-07', '--column', 'lambda', '--on', 'yesterday'], '--on should be a date'],
])('%j is answered in one line: %s', async (words, part) => {
  const { code, err } = await working(...words);
  expect(code).toBe(2);
  expect(err).toHaveLength(1);
  expect(err[0]).toContain(part);
});

test('of any cell of a saved notebook; what the cell has no column for is not asked', async () => {
  const notebook = join(import.meta.dirname, '../../../sample-data/campus-review.json');
  const ask = (...more: string[]) => desk.type('working', notebook, ...more);
  const { code, out } = await ask('--cell', 'raise', '--unit', 'DRU-2', '--column', 'evidence');
  expect(code).toBe(0);
  // 460 x 20.9 / (20.9 - 8.2) = 757.008, less the 400 ppm air-free that common practice takes as the limit, to its doubt of 25 ppm.
  expect(out[0]).toBe('CO above the limit: 357 ppm');
  expect(out).toContain('From readings-crew-one.csv, line 833.');
  for (const [words, fault] of [
    [['--cell', 'nowhere', '--unit', 'DRU-2', '--column', 'x'], 'the notebook has no cell nowhere'],
    [['--cell', 'savings', '--unit', 'DRU-2', '--column', 'x', '--state', 'as_found'], 'cell savings have no state'],
    [['--cell', 'savings', '--unit', 'X-1', '--column', 'cost_saved'], 'cell savings has no row of unit X-1'],
    [['--unit', 'DRU-2', '--column', 'lambda', '--fuel', 'propane'], '--fuel was given beside a notebook'],
  ] as const) {
    const refused = await ask(...words);
    expect([refused.code, refused.err.join('\n')]).toEqual([2, expect.stringContaining(fault)]);
  }
});
