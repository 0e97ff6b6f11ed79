import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

/** One visit typed in twice: 131 °F are 55.0 °C, 8.09 in. w.c. are 20.15 mbar (249.089 Pa each). */
const ONE = `unit,taken_at,fire,state,o2_pct,co2_pct,co_ppm,flue_F,supply_running_inwc,analyzer,note
B-1,2019-10-21T09:08,high,as_found,5.7,8.7,14,152,8.09,An-2,
B-1,2019-10-21T09:18,low,as_found,6.0,8.5,43,131,8.39,An-2,
`;
const OTHER = `Anlage;Datum;Uhrzeit;Laststufe;Zustand;O2 [%];CO2 [%];CO gemessen [ppm];Abgastemperatur [°C];Flie\u00dfdruck [mbar]
B-1;21.10.2019;09:08;Volllast;;5,7;8,7;14;66,7;20,15
B-1;21.10.2019;09:18;Kleinlast;vorher;6,0;8,5;43;55,0;20,90
`;
const both = (other = OTHER) => [fileOf('one.csv', ONE), fileOf('other.csv', other)];

describe('a reading that two exports hold', () => {
  test('in other units, with other rounding and fewer columns, is a duplicate of the fuller one', async () => {
    const { tables } = await accepted(both());
    expect(rowsOf(tables['accepted']).map((row) => row['source_file'])).toEqual(['one.csv', 'one.csv']);
    expect(rowsOf(tables['duplicates'])).toEqual([
      { source_file: 'other.csv', source_line: '2', of_file: 'one.csv', of_line: '2' },
      { source_file: 'other.csv', source_line: '3', of_file: 'one.csv', of_line: '3' },
    ]);
  });

  test('comes out the same whatever the order of the files', async () => {
    const [forth, back] = [await accepted(both()), await accepted(both().reverse())];
    expect(rowsOf(back.tables['accepted'])).toEqual(rowsOf(forth.tables['accepted']));
  });

  test('may have no time of day in one of them', async () => {
    const days = OTHER.replaceAll(/;09:\d\d/g, ';');
    expect((await accepted(both(days))).tables['duplicates'].rows).toBe(2);
  });

  test('is not one where a value that both know differs by more than the digits', async () => {
    const { tables } = await accepted(both(OTHER.replace('66,7', '67,4')), { revised: 'keep_both' });
    expect(tables['duplicates'].rows).toBe(1);
  });

  test('is not one where CO is a bound in one of them only', async () => {
    const { tables } = await accepted(both(OTHER.replace(';14;', ';>14;')), { revised: 'keep_both' });
    expect(tables['duplicates'].rows).toBe(1);
  });
});

describe('a revised copy of a reading', () => {
  const HEAD = 'unit,taken_at,fire,state,o2_pct,co_ppm';
  const old = fileOf('a.csv', `${HEAD}\nB-1,2024-03-13T10:15,high,as_found,4.6,4100\n`);
  const revised = fileOf('b.csv', `${HEAD}\nB-1,2024-03-13T10:15,high,as_found,5.1,28\n`);

  test('is asked about, with both rows and the flag', async () => {
    const outcome = await readReadings([old, revised]);
    expect(outcome.status === 'question' && `${outcome.question.message} ${outcome.question.byCommand}`).toMatch(
      /1 reading stands in two files.*o2_pct 4.6 and 5.1.*a.csv, line 2, and b.csv, line 2.*--revised keep_last/,
    );
  });

  test('of the file given last counts if so answered; the other is set aside, and named where its CO is high', async () => {
    const result = await accepted([old, revised], { revised: 'keep_last' });
    expect(rowsOf(result.tables['accepted']).map((row) => row['o2_pct'])).toEqual(['5.1']);
    expect(rowsOf(result.tables['set-aside'])[0]).toMatchObject({
      source_file: 'a.csv',
      reason: 'replaced by the revised copy in b.csv, line 2',
    });
    expect(kind.describe(result).remarks[0]).toMatchObject({ severity: 'danger' });
  });

  test('counts beside the first if so answered', async () => {
    expect((await accepted([old, revised], { revised: 'keep_both' })).tables['accepted'].rows).toBe(2);
  });
});

describe('a file', () => {
  test('without a reading is an error in one sentence', async () => {
    expect(await readReadings([fileOf('a.csv', 'unit,taken_at,fire,state,o2_pct\n')])).toMatchObject({
      status: 'error',
      message: expect.stringMatching(/^a.csv holds no reading/),
    });
  });

  test('with two dates that contradict each other names both lines', async () => {
    const outcome = await readReadings([
      fileOf('a.csv', 'unit,taken_at,o2_pct\nB-1,13/04/2025,5\nB-1,04/16/2025,5\nB-1,04/05/2025,5\n'),
    ]);
    expect(outcome.status === 'question' && outcome.question.message).toBe(
      'a.csv: its dates contradict each other: line 2 (2025-04-13) can only have the day first, line 3 (2025-04-16) only the month; the other dates may be either.',
    );
  });

  test('with a head that stands there twice says which column is read', async () => {
    const result = await accepted('unit,taken_at,o2_pct,co_ppm,o2_pct\nB-1,2025-04-13,5,20,6\n');
    expect(kind.describe(result).remarks.map(({ text }) => text)).toContainEqual(
      expect.stringMatching(/the head "o2_pct" stands there twice; the first/),
    );
  });

  test('that leaves empty fields at the end of its rows out is read', async () => {
    const rows = 'B-1,2025-04-13,5,20\nB-1,2025-05-13,5\nB-1,2025-06-13,5,20,seen\n';
    const { tables } = await accepted(`unit,taken_at,o2_pct,co_ppm,note\n${rows}`);
    expect([tables['accepted'].rows, tables['set-aside'].rows]).toEqual([3, 0]);
  });

  test('that keeps them is not: a short row has lost a delimiter', async () => {
    const rows = 'B-1,2025-04-13,520,\nB-1,2025-05-13,5,20,\nB-1,2025-06-13,5,20,seen\n';
    const { tables } = await accepted(`unit,taken_at,o2_pct,co_ppm,note\n${rows}`);
    expect([tables['accepted'].rows, tables['set-aside'].rows]).toEqual([2, 1]);
  });
});

describe('what was set aside', () => {
  test('is kept whole where its text spans lines', async () => {
    const { tables } = await accepted(
      'unit,taken_at,o2_pct,note\nB-1,2025-04-13,5,\nB-1,2025-02-30,5,"one\ntwo"\nB-1,2025-04-14,5,\n',
    );
    expect(rowsOf(tables['set-aside']).map((row) => row['original'])).toEqual(['B-1,2025-02-30,5,"one\ntwo"']);
  });

  test('is read from the same bytes as before, or not at all', async () => {
    const good = 'unit,taken_at,o2_pct\nB-1,2025-04-13,5\nB-1,2025-02-30,5\n';
    const file = { ...fileOf('a.csv', good), hash: '0'.repeat(64) };
    expect(await readReadings([file])).toMatchObject({
      status: 'error',
      message: expect.stringMatching(/^a.csv changed while it was read/),
    });
  });
});
