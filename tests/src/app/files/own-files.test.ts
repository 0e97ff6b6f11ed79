import { expect, test } from 'vitest';
import { tablesAmong } from '../../../../src/app/files/folder-files.ts';
import { guessRole } from '../../../../src/app/files/guess-role.ts';
import { readBeginning } from '../../../../src/app/files/read-beginning.ts';
import { notebookFile } from '../../../../src/app/files/save-file.ts';

test.each([
  ['a.csv', 'unit,taken_at,fire,state,o2_pct,co_ppm\n', 'readings'],
  ['b.csv', 'Anlage;Datum;O2 [%];CO2 [%];Abgas (°C)\n', 'readings'],
  ['c.csv', 'unit,fuel,site,heat_input_high_kW,o2_high_target_pct\n', 'register'],
  ['d.csv', 'unit,on,event,note\n', 'events'],
  ['e.csv', 'unit,fuel,from,to,quantity,quantity_unit,cost\n', 'fuel-use'],
  ['register.csv', 'a,b\n', 'register'],
  ['whatever.csv', 'a,b\n', undefined],
  ['export-2026.csv', 'Id;Wert 1;Wert 2\n', 'readings'],
  ['units and events/export-2026.csv', 'Id;Wert 1;Wert 2\n', 'readings'],
])('%s with head %j is proposed as %s', (name, head, role) => {
  expect(guessRole(name, head)).toBe(role);
});

test('empty, packed and binary files are refused in one sentence', async () => {
  expect(await readBeginning(new File([], 'a.csv'))).toMatchObject({
    status: 'error',
    message: expect.stringContaining('a.csv is empty'),
  });
  const packed = new File([Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0)], 'b.csv');
  expect(await readBeginning(packed)).toMatchObject({
    status: 'error',
    message: expect.stringContaining('b.csv is no text file'),
  });
  const binary = new File([Uint8Array.from({ length: 300 }, (_, i) => (i % 10 === 0 ? 0 : i % 256))], 'c.csv');
  expect((await readBeginning(binary)).status).toBe('error');
});

test.each([
  ['a.pdf', '%PDF-1.7\n1 0 obj', /a\.pdf is a PDF document/],
  ['b.html', '<!doctype html><title>x</title>', /written in tags/],
  ['c.json', '{"rows": [1, 2]}', /JSON, and no notebook/],
  ['d.json', '[1, 2, 3]', /JSON, and no notebook/],
])('%s is of another kind, and refused in one sentence', async (name, text, said) => {
  expect(await readBeginning(new File([text], name))).toMatchObject({
    status: 'error',
    message: expect.stringMatching(said),
  });
});

test('UTF-16 text with and without its mark is no binary file', async () => {
  const wide = (text: string) => [...text].flatMap((letter) => [letter.charCodeAt(0), 0]);
  const marked = new File([Uint8Array.of(0xff, 0xfe, ...wide('unit,o2_pct'))], 'a.csv');
  expect(await readBeginning(marked)).toEqual({ status: 'value', value: 'unit,o2_pct' });
  expect((await readBeginning(new File([Uint8Array.from(wide('unit,o2_pct'))], 'b.csv'))).status).toBe('value');
});

test('a title becomes a file name', () => {
  expect(notebookFile('Quillmere campus, November 2026')).toBe('quillmere-campus-november-2026.json');
  expect(notebookFile('???')).toBe('notebook.json');
});

test("of a folder, tables are taken, other files are named, and hidden ones are nobody's", () => {
  const names = [
    'chosen.pdf',
    'Boilers/2019/a.CSV',
    'Boilers/2020/a.csv',
    'Boilers/plan.pdf',
    'Boilers/.listing',
    'Boilers/~$a.csv~',
  ];
  const { tables, others } = tablesAmong(names.map((name) => new File(['x'], name)));
  // What somebody chose by itself is not left out unasked.
  expect(tables.map(({ name }) => name)).toEqual(['chosen.pdf', 'Boilers/2019/a.CSV', 'Boilers/2020/a.csv']);
  expect(others).toEqual(['Boilers/plan.pdf']);
});
