import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readIsoDate } from '../../../shared/quantities/dates.ts';
import { raisedSchema } from '../../../shared/schemas/raised.ts';
import { numberColumn, textColumn } from '../../../shared/table/columns.ts';
import { tableOf } from '../../../shared/table/schema.ts';
import type { Column } from '../../../shared/table/table.ts';
import { raisedLines } from '../../../src/cli/raised-lines.ts';
import { servePage } from '../../../src/cli/serve-page.ts';
import { Desk } from './shell-for-tests.ts';

type Row = readonly [unit: string, fire: string, tier: string, reason: string, chance: number, by: string];

const raised = (rows: readonly Row[]) =>
  tableOf(
    raisedSchema,
    rows.length,
    new Map<string, Column>([
      [
        'rank',
        numberColumn(
          '1',
          Float64Array.from(rows, (_, at) => at + 1),
        ),
      ],
      ['unit', textColumn(rows.map(([unit]) => unit))],
      ['fire', textColumn(rows.map(([, fire]) => fire))],
      ['tier', textColumn(rows.map(([, , tier]) => tier))],
      ['reason', textColumn(rows.map(([, , , reason]) => reason))],
      [
        'probability',
        numberColumn(
          '1',
          Float64Array.from(rows, ([, , , , chance]) => chance),
        ),
      ],
      ['by_date', { kind: 'date', values: Float64Array.from(rows, ([, , , , , by]) => readIsoDate(by)) }],
    ]),
  );

describe('the table in the terminal', () => {
  const rows: Row[] = [
    ['DRU-2', 'high', 'safety', 'co_high', Number.NaN, ''],
    ['IRO-1', 'low', 'tolerance', 'leaving_tolerance', 0.999, '2027-03-31'],
  ];

  test('has one line a row under its head, unknowns empty, chances never rounded to certainty', () => {
    expect(raisedLines(raised(rows), 80)).toEqual([
      '   Unit   Fire  Tier       Reason             Chance  By',
      '1  DRU-2  high  safety     co high',
      '2  IRO-1  low   tolerance  leaving tolerance   >99 %  2027-03-31',
    ]);
  });

  test.each([40, 80, 100, 300])('fits a terminal of %i characters taken as 80 to 100', (width) => {
    const long: Row[] = Array.from({ length: 200 }, (_, at) => [
      `Unit ${at} of the long house at the far end`,
      'unnamed',
      'tolerance',
      'flue_temperature_rising_and_more_words_than_fit',
      0.5,
      '2027-03-31',
    ]);
    const lines = raisedLines(raised(long), width);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(Math.min(Math.max(width, 80), 100));
    expect(lines.at(-1)).toMatch(/^and 180 more/);
  });

  test('says so when nobody is raised', () => {
    expect(raisedLines(raised([]), 80)).toEqual(['No unit is raised.']);
  });
});

describe('serving the page', () => {
  const folder = mkdtempSync(join(tmpdir(), 'between-visits-page-'));
  const desk = new Desk(new Map());
  let other: Server;
  let taken = 0;
  beforeAll(async () => {
    writeFileSync(join(folder, 'index.html'), '<!doctype html><title>x</title>');
    writeFileSync(join(folder, 'worker.js'), '');
    other = createServer();
    await new Promise<void>((resolve) => {
      other.listen(0, '127.0.0.1', resolve);
    });
    taken = (other.address() as AddressInfo).port;
  });
  afterAll(() => {
    other.close();
    desk.clear();
    rmSync(folder, { recursive: true, force: true });
  });

  test('gives the policy to the page and to no script', async () => {
    const server = await servePage(folder, 0);
    const { port } = server.address() as AddressInfo;
    const policy = async (path: string) =>
      (await fetch(`http://127.0.0.1:${port}/${path}`)).headers.get('content-security-policy');
    expect(await policy('')).toContain("default-src 'none'");
    expect(await policy('index.html')).toContain("frame-ancestors 'none'");
    expect(await policy('worker.js')).toBeNull();
    expect((await fetch(`http://127.0.0.1:${port}/../package.json`)).status).toBe(404);
    server.closeAllConnections();
    server.close();
  });

  test('a port that is taken is named, with what to type instead', async () => {
    await expect(servePage(folder, taken)).rejects.toThrow(`Port ${taken} is taken`);
    await expect(servePage(folder, taken)).rejects.toThrow(/PORT=\d+ npm start/);
  });
});
