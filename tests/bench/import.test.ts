import { createReadStream, mkdtempSync, rmSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { kind } from '../../cells/readings/kind.ts';
import type { SourceFile } from '../../shared/cell.ts';
import type { Table } from '../../shared/table/table.ts';
import { contextOf } from '../shared/readings/file-of.ts';

/** Bringing readings in, beside PapaParse's own streamed read of the same file into nothing, in one run. */
const READINGS = Number(process.env['BENCH_READINGS'] ?? 1_000_000);
const folder = mkdtempSync(join(tmpdir(), 'import-bench-'));
const path = join(folder, 'readings.csv');
const MB = 1 << 20;

beforeAll(async () => writeReadings(path, READINGS), 300_000);
afterAll(() => rmSync(folder, { recursive: true }));

test(`${READINGS.toLocaleString('en-US')} readings`, async () => {
  const peer = [await timed(parseOnly), await timed(parseOnly), await timed(parseOnly)].sort((a, b) => a - b)[1];
  const times: number[] = [];
  let above = 0;
  for (let round = 0; round < 3; round++) {
    globalThis.gc?.();
    const before = process.memoryUsage().rss;
    let peak = before;
    const watch = setInterval(() => {
      peak = Math.max(peak, process.memoryUsage().rss);
    }, 20);
    let result: Table | undefined;
    times.push(
      await timed(async () => {
        result = await importAll();
      }),
    );
    clearInterval(watch);
    if (round === 0) above = (Math.max(peak, process.memoryUsage().rss) - before - bytesOf(result)) / MB;
    expect(result?.rows).toBe(READINGS);
  }
  const own = times.sort((a, b) => a - b)[1];
  const size = statSync(path).size / MB;
  console.log(
    `import ${READINGS} readings (${size.toFixed(0)} MB): ${own.toFixed(2)} s; PapaParse into nothing ${peer.toFixed(2)} s; ` +
      `ratio ${(own / peer).toFixed(2)} (goal 2.0); ${above.toFixed(0)} MB above the columns (goal 350)`,
  );
});

async function importAll(): Promise<Table> {
  const file = sourceOf(path);
  const parameters = kind.readParameters({ files: [file.name], register: '' });
  if (parameters.status !== 'value') throw new Error('parameters');
  const done = await kind.compute(parameters.value, new Map(), contextOf([file], '2026-12-31'), undefined);
  if (done.status !== 'value') throw new Error(JSON.stringify(done));
  return done.value.tables['accepted'];
}

function parseOnly(): Promise<void> {
  return new Promise((resolve, reject) => {
    Papa.parse(createReadStream(path, { encoding: 'utf8', highWaterMark: 1 << 18 }), {
      chunk: () => {},
      complete: () => resolve(),
      error: reject,
    });
  });
}

const sourceOf = (name: string): SourceFile => ({
  name,
  size: statSync(name).size,
  hash: '',
  open: () => createReadStream(name, { highWaterMark: 1 << 18 }),
});

async function timed(run: () => Promise<unknown>): Promise<number> {
  const started = performance.now();
  await run();
  return (performance.now() - started) / 1000;
}

function bytesOf(table: Table | undefined): number {
  const buffers = new Set<ArrayBufferLike>();
  for (const column of table?.columns.values() ?? []) {
    buffers.add(column.kind === 'text' ? column.codes.buffer : column.values.buffer);
    if (column.kind === 'number' && column.bounds) buffers.add(column.bounds.buffer);
  }
  return [...buffers].reduce((sum, { byteLength }) => sum + byteLength, 0);
}

/** Seeded readings of about 90 bytes in the project's own columns, sorted by time as an export is. */
async function writeReadings(name: string, count: number): Promise<void> {
  const file = await open(name, 'w');
  let seed = 12345;
  const random = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const two = (n: number): string => String(n).padStart(2, '0');
  await file.write(
    'unit,taken_at,fire,state,technician,o2_pct,co2_pct,co_ppm,flue_C,air_C,supply_static_Pa,supply_running_Pa,analyzer\n',
  );
  const units = Math.ceil(count / 24);
  let text = '';
  for (let i = 0; i < count; i++) {
    const visit = Math.floor(i / 4 / units);
    const unit = Math.floor(i / 4) % units;
    const day = `${2014 + (visit % 11)}-${two(1 + (unit % 12))}-${two(1 + (unit % 28))}`;
    const o2 = 3 + 4 * random();
    const fire = i % 2 === 0 ? 'high' : 'low';
    text += `U-${unit},${day}T${two(8 + (unit % 9))}:${two((i % 4) * 12)},${fire},${i % 4 < 2 ? 'as_found' : 'as_left'},T${unit % 40},`;
    text += `${o2.toFixed(1)},${((11.9 * (20.95 - o2)) / 20.95).toFixed(1)},${i % 9999 === 0 ? '>4000' : Math.floor(60 * random())},`;
    text += `${(140 + 60 * random()).toFixed(1)},${(10 + 20 * random()).toFixed(1)},${i % 4 === 0 ? 1743 : ''},${Math.floor(1600 + 90 * random())},An-${unit % 37}\n`;
    if (text.length > MB) {
      await file.write(text);
      text = '';
    }
  }
  await file.write(text);
  await file.close();
}
