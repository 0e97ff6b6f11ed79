import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';
import { csv, GOOD, HEAD, remarks } from './small-export.ts';

describe('every row is accepted, set aside with its reason, or a duplicate', () => {
  test.each([
    ['5.x for O2', 'B-01,2024-03-13,high,as_found,5.x,28,', 'o2_pct: "5.x" is neither a number nor a mark for unknown'],
    ['no unit', ',2024-03-13,high,as_found,4.6,28,', 'no unit: the cell that should name it is empty'],
    ['no date', 'B-01,,high,as_found,4.6,28,', 'no date: the cell that should hold it is empty'],
    [
      'a date that does not exist',
      'B-01,2024-02-30,high,as_found,4.6,28,',
      'taken_at: "2024-02-30" is no date that exists',
    ],
    [
      'no measurement',
      'B-01,2024-03-13,high,as_found,,,seen',
      'no measurement: every measured value of the row is empty or unknown',
    ],
    [
      'an unknown fire',
      'B-01,2024-03-13,sideways,as_found,4.6,28,',
      'fire: "sideways" is none of high, low, mid, single, unnamed',
    ],
    [
      'an unknown state',
      'B-01,2024-03-13,high,so so,4.6,28,',
      'state: "so so" is none of as_found, as_left, trial, unknown',
    ],
    [
      'a row cut off',
      'B-01,2024-03-13,high',
      '3 fields where the head line has 7: the row is cut off or a delimiter is missing',
    ],
    [
      'a decimal comma among points',
      'B-01,2024-03-13,high,as_found,4,6,28,',
      '8 fields where the head line has 7: a text or a number holds the delimiter without quotes',
    ],
    [
      'a date after the as-of day',
      'B-01,2026-11-16,high,as_found,4.6,28,',
      'taken at 2026-11-16, after the day the notebook looks from (2026-11-15)',
    ],
    [
      'a quote left open',
      'B-01,2024-03-13,high,as_found,4.6,28,"open',
      'a quote is opened and not closed on this line',
    ],
  ])('%s', async (_, bad, reason) => {
    const result = await accepted(csv(GOOD, bad, GOOD.replace('28', '29')));
    expect(rowsOf(result.tables['set-aside'])).toEqual([
      { source_file: 'export.csv', source_line: '3', reason, original: bad },
    ]);
    expect(rowsOf(result.tables['account'])).toEqual([
      { file: 'export.csv', rows_read: '3', accepted: '2', set_aside: '1', duplicates: '0' },
    ]);
  });

  test('readings on the as-of day itself are in', async () => {
    const result = await accepted(csv('B-01,2026-11-15T23:59,high,as_found,4.6,28,'));
    expect(result.tables['accepted'].rows).toBe(1);
  });

  test('empty fire is unnamed, empty state unknown', async () => {
    const [row] = rowsOf((await accepted(csv('B-01,2024-03-13,,,4.6,28,'))).tables['accepted']);
    expect([row['fire'], row['state']]).toEqual(['unnamed', 'unknown']);
  });

  test('the source is the file and the physical line, also below a note with line breaks', async () => {
    const result = await accepted(csv('B-01,2024-03-13,low,as_left,5,9,"one\ntwo\nthree"', GOOD));
    expect(rowsOf(result.tables['accepted']).map((row) => [row['fire'], row['source_line']])).toEqual([
      ['low', '2'],
      ['high', '5'],
    ]);
  });

  test('account.json has four counts a file and their sums', async () => {
    const files = [fileOf('a.csv', csv(GOOD, GOOD)), fileOf('b.csv', csv(GOOD, 'x'))];
    const outputs = kind.files?.(await accepted(files)) ?? [];
    const account = outputs.find(({ name }) => name === 'account.json');
    expect(account && 'json' in account && account.json).toMatchObject({
      files: [
        { file: 'a.csv', rows_read: 2, accepted: 1, set_aside: 0, duplicates: 1 },
        { file: 'b.csv', rows_read: 2, accepted: 0, set_aside: 1, duplicates: 1 },
      ],
      total: { rows_read: 4, accepted: 1, set_aside: 1, duplicates: 2 },
    });
    expect(outputs.map(({ name }) => name)).toEqual(['accepted.csv', 'set-aside.csv', 'account.json']);
  });
});

test('rows under the head line of another table are not read by the wrong heads', async () => {
  const other = 'unit,taken_at,fire,state,co_ppm,o2_pct,note';
  const result = await accepted(
    csv(GOOD, other, 'B-02,2024-03-13,high,as_found,28,4.6,', HEAD, GOOD.replace('28', '29')),
  );
  const rows = rowsOf(result.tables['accepted']);
  expect(rows.map((row) => [row['source_line'], row['o2_pct'], row['co_ppm']])).toEqual([
    ['2', '4.6', '28'],
    ['6', '4.6', '29'],
    ['4', '4.6', '28'],
  ]);
});

describe('the same export again', () => {
  test('adds nothing, whatever its dialect', async () => {
    const semicolons = 'unit;taken_at;fire;state;o2_pct;co_ppm;note\nB-01;13.03.2024 10:15;Volllast;vorher;4,6;28;\n';
    const result = await accepted([fileOf('a.csv', csv(GOOD)), fileOf('b.csv', semicolons)]);
    expect(result.tables['accepted'].rows).toBe(1);
    expect(rowsOf(result.tables['duplicates'])).toEqual([
      { source_file: 'b.csv', source_line: '2', of_file: 'a.csv', of_line: '2' },
    ]);
  });

  test('a revised copy keeps both and says so', async () => {
    const result = await accepted(csv(GOOD, GOOD.replace('4.6', '4.8')));
    expect(result.tables['accepted'].rows).toBe(2);
    expect(remarks(result)).toContainEqual(
      expect.stringMatching(/^warning: 1 reading has the same unit.*line 3, beside .*line 2/),
    );
  });

  test('a bound is not the number beside it', async () => {
    const result = await accepted(csv(GOOD, GOOD.replace(',28,', ',>28,')));
    expect(result.tables['duplicates'].rows).toBe(0);
  });
});

describe('high CO is never lost', () => {
  test('a row set aside for another fault is named first', async () => {
    const result = await accepted(csv(GOOD, 'B-02,2024-02-30,high,as_left,4.6,>4000,'));
    expect(remarks(result)[0]).toMatch(/^danger: export.csv, line 3: a row with CO >4000 was set aside/);
  });

  test('under a head line that is none of readings it is named first', async () => {
    const text = csv(GOOD, '', 'Location,Remark,CO (ppm),O2 (%)', 'Room 4,checked,2500,4.2', 'Room 5,checked,12,4.3');
    const told = remarks(await accepted(text)).filter((remark) => remark.startsWith('danger'));
    expect(told).toEqual([expect.stringMatching(/line 5: a row with CO 2500 .*was set aside/)]);
  });

  test('a mark over range where no number belongs may be CO, and is named first', async () => {
    const text = csv(GOOD, 'B-02,2024-03-02,>4000,5.2,,,', 'B-02,2024-03-02,<4000,5.2,,,');
    const told = remarks(await accepted(text)).filter((remark) => remark.startsWith('danger'));
    expect(told).toEqual([expect.stringMatching(/line 3: a row with CO >4000 \(if that is CO\) was set aside/)]);
  });

  test('values of a column in ppm that nobody understood are named where they would be dangerous; other gases are not', async () => {
    const text = [
      'unit,taken_at,fire,state,o2_pct,Gas 3 (ppm),SO2 (ppm)',
      'B-01,2024-03-01T09:00,high,as_found,4.1,30,900',
      'B-01,2024-03-01T09:10,low,as_found,5.1,4500,900',
      'B-01,2024-03-01T09:20,mid,as_found,5.1,OVER,900',
      '',
    ].join('\n');
    const told = remarks(await accepted(text)).filter((remark) => remark.startsWith('danger'));
    expect(told).toEqual([
      expect.stringMatching(/"Gas 3 \(ppm\)" holds, and 2 of its values .*the first on line 3 \(4500\)/),
    ]);
  });

  test('over range is at least what the analyzer has shown, and for CO at least 2000 ppm', async () => {
    const result = await accepted(
      csv(GOOD, 'B-02,2024-03-14,high,as_left,4.6,OVER,', 'B-03,2024-03-14,high,as_left,****,3500,'),
    );
    expect(rowsOf(result.tables['accepted']).map((row) => [row['co_ppm'], row['o2_pct']])).toEqual([
      ['28', '4.6'],
      ['>3500', '4.6'],
      ['3500', '>4.6'],
    ]);
    const low = await accepted(csv(GOOD, 'B-02,2024-03-14,high,as_left,4.6,OFL,'));
    expect(rowsOf(low.tables['accepted'])[1]['co_ppm']).toBe('>2000');
    expect(remarks(low)).toContainEqual(expect.stringContaining('"over range" without a number'));
  });

  test('dashes for CO beside other values are pointed out', async () => {
    const result = await accepted(csv(GOOD, 'B-02,2024-03-14,high,as_left,4.6,----,'));
    expect(remarks(result)).toContainEqual(expect.stringMatching(/"----" for CO, the first in export.csv, line 3/));
  });
});

describe('unit ids', () => {
  const register = new Map([
    ['register', { tables: { units: makeTable([['unit', textColumn(['B-07', 'B-10', '1-11', 'C-101'])]]) } }],
  ]);
  const read = async (...units: string[]): ReturnType<typeof readReadings> =>
    readReadings(
      [fileOf('export.csv', csv(...units.map((unit, i) => `${unit},2024-03-${10 + i},high,as_found,4.6,28,`)))],
      { register: 'register' },
      register,
    );

  test('are spelled as the register spells them', async () => {
    const outcome = await read('b-07', 'B 7', 'B07', 'BO7', 'b_07');
    if (outcome.status !== 'value') throw new Error();
    expect(rowsOf(outcome.value.tables['accepted']).map((row) => row['unit'])).toEqual(Array(5).fill('B-07'));
  });

  test('near misses are named and not merged, strangers kept', async () => {
    const outcome = await read('B-17', '11-1', 'Z-99');
    if (outcome.status !== 'value') throw new Error();
    expect(rowsOf(outcome.value.tables['accepted']).map((row) => row['unit'])).toEqual(['11-1', 'B-17', 'Z-99']);
    const told = remarks(outcome.value).join('\n');
    expect(told).toContain('not in the register');
    expect(told).toContain('Z-99');
  });

  test('a letter for the digit before zeros is a near miss too', async () => {
    const outcome = await read('C-l01');
    if (outcome.status !== 'value') throw new Error();
    expect(remarks(outcome.value).join()).toMatch(/"C-l01" \(1 reading\) is not in the register, but "C-101" is/);
  });
});
