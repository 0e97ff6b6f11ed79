import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { textColumn } from '../../../shared/table/columns.ts';
import { makeTable } from '../../../shared/table/table.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';

const HEAD = 'unit,taken_at,fire,state,o2_pct,co_ppm,note';
const csv = (...rows: string[]): string => `${[HEAD, ...rows].join('\n')}\n`;
const GOOD = 'B-01,2024-03-13T10:15,high,as_found,4.6,28,';

const remarks = (result: Parameters<typeof kind.describe>[0]): string[] =>
  kind.describe(result).remarks.map(({ severity, text }) => `${severity}: ${text}`);

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
    ['register', { tables: { units: makeTable([['unit', textColumn(['B-07', 'B-10', '1-11'])]]) } }],
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
});

test('a fuel that nobody names is proposed from the CO2max that the readings imply', async () => {
  // Propane: CO2max 13.7 %, so 13.7 (20.95 - O2) / 20.95 % CO2 (stoichiometry).
  const rows = [3, 4.5, 6].map(
    (o2, i) => `B-09,2024-03-1${i},high,as_found,${o2},${((13.7 * (20.95 - o2)) / 20.95).toFixed(1)}`,
  );
  const result = await accepted(`unit,taken_at,fire,state,o2_pct,co2_pct\n${rows.join('\n')}\n`);
  expect(remarks(result)).toContainEqual(
    expect.stringMatching(
      /^warning: 3 readings of 1 unit name no fuel, but evidence does, such as for B-09.*13\.7 .*that of propane.*--accept fuels/,
    ),
  );
});

describe('states of single printouts', () => {
  const rows = [
    'B-01,2024-03-13T09:00,high,,4.6,28,',
    'B-02,2024-03-13T09:00,high,,4.6,28,',
    'B-02,2024-03-13T09:20,high,,4.8,28,',
    'B-02,2024-03-13T09:40,high,,5.0,28,',
  ];
  const states = async (options: Record<string, unknown>): Promise<string[]> =>
    rowsOf((await accepted(csv(...rows), options)).tables['accepted']).map((row) => row['state']);

  test('stay unknown until the user says', async () => {
    expect(await states({})).toEqual(['unknown', 'unknown', 'unknown', 'unknown']);
    expect(await states({ singleReading: 'as_left' })).toEqual(['as_left', 'as_found', 'trial', 'as_left']);
    expect(await states({ singleReading: 'as_found' })).toEqual(['as_found', 'as_found', 'trial', 'as_left']);
  });
});

describe('what the file does not settle is asked, with the flag that answers', () => {
  const question = async (text: string, options: Record<string, unknown> = {}): Promise<string> => {
    const outcome = await readReadings([fileOf('export.csv', text)], options);
    return outcome.status === 'question'
      ? `${outcome.question.message} ${outcome.question.remedy}`
      : JSON.stringify(outcome);
  };

  test('order of day and month', async () => {
    const text = csv('B-01,3/4/2024,high,as_found,4.6,28,', 'B-01,5/6/2024,high,as_found,4.6,28,');
    expect(await question(text)).toMatch(/line 2 may be 2024-04-03 or 2024-03-04.*--date-order dmy/);
    const answered = await accepted(text, { dateOrder: 'mdy' });
    expect(rowsOf(answered.tables['accepted'])[0]['taken_at']).toBe('2024-03-04');
  });

  test('one date over 12 settles all of its file and only that', async () => {
    const open = csv('B-01,3/4/2024,high,as_found,4.6,28,');
    const settled = csv('B-02,3/4/2024,high,as_found,4.6,28,', 'B-02,3/14/2024,high,as_found,4.6,28,');
    const outcome = await readReadings([fileOf('a.csv', settled), fileOf('b.csv', open)]);
    expect(outcome.status).toBe('question');
    const both = await accepted([fileOf('a.csv', settled), fileOf('b.csv', open)], { dateOrder: 'dmy' });
    expect(rowsOf(both.tables['accepted']).map((row) => `${row['unit']} ${row['taken_at']}`)).toEqual([
      'B-01 2024-04-03',
      'B-02 2024-03-04',
      'B-02 2024-03-14',
    ]);
  });

  test('°C or °F, mbar or in. w.c., raw or air-free CO, decimal or thousands', async () => {
    const at = 'Boiler,Date,O2 (%)';
    expect(await question(`${at},Stack temp\nB-01,2024-03-13,4.6,180\n`)).toMatch(
      /"Stack temp" does not say its unit \(C, F\?\); its first values are 180.*--profile/,
    );
    expect(await question(`${at},Static pressure\nB-01,2024-03-13,4.6,7\n`)).toMatch(/"Static pressure".*inwc, mbar/);
    expect(await question(`${at},CO\nB-01,2024-03-13,4.6,28\n`)).toMatch(/raw as the analyzer shows it or air-free/);
    expect(await question('Boiler;Date;CO raw (ppm)\nB-01;2024-03-13;1,028\n')).toMatch(
      /"1,028" may have a decimal mark or a thousands mark/,
    );
  });

  test('no unit anywhere', async () => {
    expect(await question('Date,O2 (%),CO raw (ppm)\n2024-03-13,4.6,28\n')).toMatch(
      /does not say which unit.*"unit": "B-07"/,
    );
  });
});

describe('bad files: one clear sentence', () => {
  const fault = async (content: string | Uint8Array): Promise<string> => {
    const outcome = await readReadings([fileOf('export.csv', content)]);
    return outcome.status === 'error' ? outcome.message : JSON.stringify(outcome);
  };
  test.each<[string, string | Uint8Array, RegExp]>([
    ['empty', '', /^export.csv is empty/],
    ['blank', '\n \n', /^export.csv is empty/],
    [
      'zip with a .csv name',
      Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 0, 0),
      /^export.csv is not a CSV file: it holds a ZIP archive/,
    ],
    [
      'binary',
      Uint8Array.from({ length: 5000 }, (_, i) => (i * 73) % 256),
      /^export.csv is not a CSV file: it holds bytes that are no text/,
    ],
    [
      'no usable column',
      'colour,taste\nred,sweet\n',
      /^export.csv has no usable column: its first line reads "colour,taste"; it needs/,
    ],
    [
      'no date',
      'unit,o2_pct\nB-01,4.6\n',
      /^export.csv has no column for the date: the heads understood are "unit", "o2_pct"/,
    ],
    ['no measurement', 'unit,taken_at\nB-01,2024-03-13\n', /^export.csv has no column for the measured values/],
    [
      'ten thousand columns',
      `unit,taken_at,${Array.from({ length: 10_000 }, (_, i) => `c${i}`).join(',')}\n`,
      /^export.csv has 10.002 columns on its first line/,
    ],
    [
      'an endless line',
      'unit,taken_at,'.repeat(60_000),
      /^export.csv is not a CSV file of readings: its first line does not end/,
    ],
  ])('%s', async (_, content, message) => expect(await fault(content)).toMatch(message));

  test('a fuel nobody knows is named with its line and the nearest name', async () => {
    const text = `${HEAD},fuel\n${GOOD},natural_gas\n${GOOD.replace('high', 'low')},natral gas\n`;
    expect(await fault(text)).toBe(
      'export.csv, line 3: nobody knows the fuel "natral gas" (did you mean "natural_gas"?); correct it, or define that fuel by its composition.',
    );
  });

  test('a file that is lost', async () => {
    const outcome = await kind.compute(
      {
        files: ['gone.csv'],
        register: '',
        dateOrder: '',
        singleReading: '',
        revised: '',
        accept: [],
        fuels: [],
        profiles: [],
      },
      new Map(),
      {
        asOf: 20000,
        seed: 1,
        signal: new AbortController().signal,
        source: () => undefined,
        progress: () => {},
        pause: async () => {},
      },
      undefined,
    );
    expect(outcome).toMatchObject({ status: 'error', message: expect.stringContaining('gone.csv') });
  });
});

test('a byte that is no UTF-8 far down makes the file start over in Windows-1252, nothing twice', async () => {
  const head = new TextEncoder().encode(
    csv(...Array.from({ length: 6000 }, (_, i) => `B-${i},2024-03-13,high,as_found,4.6,28,as usual`)),
  );
  const tail = Uint8Array.from([
    ...new TextEncoder().encode('B-9999,2024-03-13,high,as_found,4.6,28,D'),
    0xfc,
    ...new TextEncoder().encode('se\n'),
  ]);
  const bytes = new Uint8Array(head.length + tail.length);
  bytes.set(head);
  bytes.set(tail, head.length);
  const result = await accepted(bytes);
  expect(result.tables['accepted'].rows).toBe(6001);
  expect(result.tables['duplicates'].rows).toBe(0);
  expect(rowsOf(result.tables['accepted']).find((row) => row['unit'] === 'B-9999')?.['note']).toBe('Düse');
});

test('a per-second log becomes one reading at its steadiest part', async () => {
  const lines = Array.from({ length: 180 }, (_, s) => {
    const two = (n: number): string => String(n).padStart(2, '0');
    const o2 = s < 90 ? (8 - s / 30).toFixed(1) : '5.0';
    return `B-01,2024-03-13T10:${two(Math.floor(s / 60))}:${two(s % 60)},high,as_found,${o2},${s < 90 ? 400 : 20},`;
  });
  const result = await accepted(csv(...lines));
  const [row] = rowsOf(result.tables['accepted']);
  expect(result.tables['accepted'].rows).toBe(1);
  expect([row['o2_pct'], row['co_ppm'], row['taken_at']]).toEqual(['5', '20', '2024-03-13T10:02:59']);
  expect(row['note']).toMatch(/mean of the steadiest 60 s of a log \(lines 121 to 181 of 180, O2 within 0 %\)/);
  expect(rowsOf(result.tables['account'])[0]['rows_read']).toBe('1');
});

test('files are read in memory that does not grow with a line', async () => {
  // 64 MB of one line after a good row; the host hands out the same piece again and again.
  const piece = new TextEncoder().encode('x'.repeat(1 << 20));
  const file: SourceFile = {
    name: 'endless.csv',
    size: new TextEncoder().encode(`${csv(GOOD)}B-02,\n${GOOD.replace('28', '30')}\n`).length + (64 << 20),
    hash: '',
    open: async function* () {
      yield new TextEncoder().encode(`${csv(GOOD)}B-02,`);
      for (let i = 0; i < 64; i++) yield piece;
      yield new TextEncoder().encode(`\n${GOOD.replace('28', '30')}\n`);
    },
  };
  const outcome = await readReadings([file]);
  if (outcome.status !== 'value') throw new Error(JSON.stringify(outcome));
  expect(outcome.value.tables['accepted'].rows).toBe(2);
  expect(rowsOf(outcome.value.tables['set-aside'])[0]).toMatchObject({
    source_line: '3',
    reason: 'the line is longer than any row of readings can be',
  });
});
