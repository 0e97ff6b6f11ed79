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
  // 87 ppm at 5 % O2 is the worked example of a trade school: 114 ppm (exactly 114.36).
  expect(out).toContain('  = 114.36 ppm');
  expect(out.join('\n')).toContain('87 ppm × 20.9 % / (20.9 % − 5 %)');
  expect(out.join('\n')).toMatch(/Standard uncertainty .* ppm/);
});

test('takes the last reading where no day is given', async () => {
  const { out } = await working('--unit', 'B-07', '--column', 'co_air_free_ppm');
  expect(out).toContain('  = 75.18 ppm');
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
