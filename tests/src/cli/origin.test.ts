import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { origins } from '../../../cells/readings/origins.ts';
import { fileOf } from '../../shared/readings/file-of.ts';
import { accepted } from '../../shared/readings/read-readings.ts';
import { Desk } from './shell-for-tests.ts';

const desk = new Desk(catalogue);
afterAll(() => desk.clear());
const TEXT = [
  'Analyzer;An-7',
  'Kessel;Datum;Laststufe;O2 [%];CO gemessen [ppm];Abgas [°F]',
  'K-1;13.03.2024;Volllast;4,6;>4000;212',
  '',
].join('\n');
beforeAll(() => writeFileSync(join(desk.folder, 'r.csv'), TEXT));

test('every value of a reading is followed to file, line, column and text', async () => {
  const { code, out, err } = await desk.type('origin', '--readings', 'r.csv', '--unit', 'K-1');
  expect(err).toEqual([]);
  expect(code).toBe(0);
  expect(out.slice(0, 2)).toEqual([
    'K-1, 2024-03-13, high fire, unknown: r.csv, line 3',
    '  K-1;13.03.2024;Volllast;4,6;>4000;212',
  ]);
  expect(out).toContain('  column 4, "O2 [%]": "4,6" is o2_pct 4.6');
  expect(out).toContain('  column 5, "CO gemessen [ppm]": ">4000" is co_ppm >4000');
  // 212 °F is 100 °C.
  expect(out).toContain('  column 6, "Abgas [°F]": "212" is flue_C 100');
  expect(out.join('\n')).toContain('analyzer An-7 stands in no column of the line');
});

test('a fire that a head names is told to be named there', async () => {
  writeFileSync(
    join(desk.folder, 'wide.csv'),
    'Boiler,Date,High fire O2 (%),Low fire O2 (%)\nK-1,2024-03-13,4.6,5.9\n',
  );
  const { err, out } = await desk.type('origin', '--readings', 'wide.csv', '--unit', 'K-1', '--fire', 'low');
  expect(err).toEqual([]);
  expect(out).toContain('  column 4, "Low fire O2 (%)": "5.9" is o2_pct 5.9');
  expect(out).toContain('  fire low is named at the head of its columns, such as "Low fire O2 (%)"');
  expect(out.join('\n')).not.toContain('fire low stands in no column');
});

test('what a head and a title above a printout say of it is told with their words', async () => {
  const results = ['O2 ..... 4,6 %', 'CO roh: 12 ppm', 'Abgas: 181 °C', ''];
  writeFileSync(
    join(desk.folder, 'printout.txt'),
    ['Kessel: K-9', 'Datum: 13.03.2024', '', 'Volllast', ...results, 'Teillast', ...results].join('\n'),
  );
  const { err, out } = await desk.type('origin', '--readings', 'printout.txt', '--unit', 'K-9', '--fire', 'low');
  expect(err).toEqual([]);
  expect(out[0]).toBe('K-9, 2024-03-13, low fire, unknown: printout.txt, line 9');
  expect(out).toContain('  "Kessel": "K-9" is unit K-9');
  expect(out).toContain('  "O2": "4,6 %" is o2_pct 4.6');
});

test('a file with other bytes than when it was read tells nothing', async () => {
  const file = fileOf('r.csv', TEXT);
  const result = await accepted([file]);
  const reading = {
    unit: 'K-1',
    takenAt: '',
    fire: 'high',
    state: '',
    fuel: '',
    file: 'r.csv',
    line: 3,
    fields: ['o2_pct'],
  };
  const changed = { ...fileOf('r.csv', TEXT.replace('4,6', '5,6')), hash: file.hash };
  expect((await origins(result, [reading], () => file)).get(reading)?.cells).toMatchObject([
    { text: '4,6', position: 4 },
  ]);
  expect((await origins(result, [reading], () => changed)).get(reading)).toMatchObject({ text: '', cells: [] });
});
