import { describe, expect, test } from 'vitest';
import { kind } from '../../../cells/readings/kind.ts';
import type { SourceFile } from '../../../shared/cell.ts';
import { fileOf } from './file-of.ts';
import { accepted, readReadings, rowsOf } from './read-readings.ts';
import { csv, GOOD, HEAD, remarks } from './small-export.ts';

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
  expect(row['note']).toMatch(
    /mean of the steadiest 60 s of a log of 180 lines, one every second \(lines 121 to 181 of the file, O2 within 0 %\)/,
  );
  expect(rowsOf(result.tables['account'])[0]['rows_read']).toBe('1');
  expect(remarks(result)[0]).toMatch(/^danger: export.csv: 1 log has a high CO outside .* on line 2 \(400\)/);
});

test.each([
  // The last 60 s, or of a slow log the last four steps, are steady: 5 % O2.
  ['5 s', 5, 60, 5, 60],
  ['10 s', 10, 40, 5, 60],
  ['minute', 60, 20, 5, 240],
])('a log of one line every %s becomes one reading', async (_, every, count, o2, window) => {
  const two = (n: number): string => String(n).padStart(2, '0');
  const lines = Array.from({ length: count }, (_, i) => {
    const second = i * every;
    const at = `${two(10 + Math.floor(second / 3600))}:${two(Math.floor(second / 60) % 60)}:${two(second % 60)}`;
    return `B-01,2024-03-13T${at},high,as_found,${i < count / 2 ? (8 - i / count).toFixed(2) : '5.0'},20,`;
  });
  const result = await accepted(csv('B-01,2024-03-13T09:59:15,high,as_found,4.0,20,', ...lines));
  const rows = rowsOf(result.tables['accepted']);
  expect(rows.map(({ o2_pct }) => o2_pct)).toEqual(['4', String(o2)]);
  expect(rows[1]['note']).toContain(
    `mean of the steadiest ${window} s of a log of ${count} lines, one every ${every} s (lines `,
  );
});

test('a log whose clock shows no seconds becomes one reading, and none of its lines is a duplicate', async () => {
  // One line every 10 s from 10:00:40 on: two lines of the first minute, six of each other one.
  const lines = Array.from({ length: 38 }, (_, i) => {
    const minute = String(Math.floor((40 + 10 * i) / 60)).padStart(2, '0');
    return `B-01,2024-03-13T10:${minute},high,as_found,${i < 20 ? (8 - i / 20).toFixed(2) : '5.0'},20,`;
  });
  const { tables } = await accepted(csv(...lines));
  const rows = rowsOf(tables['accepted']);
  expect(rows.map(({ o2_pct, taken_at }) => `${o2_pct} ${taken_at}`)).toEqual(['5 2024-03-13T10:06']);
  expect(rows[0]['note']).toContain('mean of the steadiest 60 s of a log of 38 lines, one every 10 s (lines ');
  expect(tables['duplicates'].rows).toBe(0);
});

test('the same printouts typed in twice within a few minutes stay duplicates', async () => {
  const times = ['10:00', '10:00', '10:01', '10:01', '10:02', '10:02'];
  const { tables } = await accepted(
    csv(...times.map((time) => `B-01,2024-03-13T${time},high,as_found,4.${time.at(-1)},20,`)),
  );
  expect([tables['accepted'].rows, tables['duplicates'].rows]).toEqual([3, 3]);
});

test('readings of one fire a few minutes apart stay readings', async () => {
  const times = ['10:00', '10:01', '10:02', '10:03', '10:07', '10:12', '10:13', '10:20', '10:21', '10:31'];
  const result = await accepted(csv(...times.map((time, i) => `B-01,2024-03-13T${time},high,as_found,4.${i},20,`)));
  expect(result.tables['accepted'].rows).toBe(times.length);
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
