import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { catalogue } from '../../../cells/catalogue.ts';
import { writeCsv } from '../../../shared/csv/write-csv.ts';
import type { Scribe } from '../../../src/cli/table-scribe.ts';
import { writePieces } from '../../../src/cli/write-pieces.ts';
import { makeFleet } from '../../bench/fleet.ts';
import { Desk } from './shell-for-tests.ts';

const written: string[] = [];
const scribe: Scribe = {
  write(path, table) {
    written.push(basename(path));
    return writePieces(path, writeCsv(table));
  },
};
const [plain, early] = [new Desk(catalogue), new Desk(catalogue, scribe)];
afterAll(() => {
  plain.clear();
  early.clear();
});

test('large tables that were written early are the same files, and nothing else stays behind', async () => {
  const fleet = makeFleet(14_000, 7);
  for (const desk of [plain, early]) {
    writeFileSync(join(desk.folder, 'readings.csv'), fleet.readings);
    writeFileSync(join(desk.folder, 'register.csv'), fleet.register);
    const ran = await desk.type('review', '--readings', 'readings.csv', '--register', 'register.csv', '--out', 'o');
    expect(ran.code).toBe(0);
  }
  expect(written).not.toEqual([]);
  expect(early.contents()).toEqual(plain.contents());
  const same = (name: string): boolean =>
    readFileSync(join(early.folder, 'o', name)).equals(readFileSync(join(plain.folder, 'o', name)));
  expect(
    ['accepted.csv', 'derived.csv', 'drift.csv', 'raised.csv', 'report.html'].filter((name) => !same(name)),
  ).toEqual([]);
});
