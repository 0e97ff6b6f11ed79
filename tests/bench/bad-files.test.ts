import { spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  closeSync,
  existsSync,
  ftruncateSync,
  mkdtempSync,
  openSync,
  readdirSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../src/app/built-page.ts';
import { type Measured, measureCommand } from './measured-command.ts';
import { writeReadings } from './write-readings.ts';

/** Files as they should not be, at their real size, on the built command line: each is survived or refused in one sentence. */
const MB = 1 << 20;
const HEAD = 'unit,taken_at,fire,state,o2_pct,co_ppm\n';
const ROW = 'B-01,2024-03-13T10:15,high,as_found,4.6,28\n';
const folder = mkdtempSync(join(tmpdir(), 'between-visits-bad-'));
const review = (file: string): readonly string[] => [
  'review',
  '--readings',
  file,
  '--register',
  'register.csv',
  '--as-of',
  '2026-12-31',
  '--out',
  'out',
];

beforeAll(() => {
  const done = spawnSync(process.execPath, [join(ROOT, 'src/cli/run.mjs'), 'build'], { cwd: ROOT });
  expect(done.status).toBe(0);
  writeFileSync(join(folder, 'register.csv'), 'unit,fuel,burner\nB-01,natural_gas,power\n');
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Writes `count` pieces after each other. */
function fill(name: string, piece: (i: number) => Uint8Array | string, count: number): string {
  const file = openSync(join(folder, name), 'w');
  for (let i = 0; i < count; i++) {
    const part = piece(i);
    writeSync(file, typeof part === 'string' ? Buffer.from(part) : part);
  }
  closeSync(file);
  return name;
}

/** Bytes without a pattern, seeded. */
function noise(bytes: number): Uint8Array {
  const made = new Uint8Array(bytes);
  let state = 1;
  for (let i = 0; i < bytes; i++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    made[i] = state >>> 24;
  }
  return made;
}

/** Ends with 2, with one sentence that names the file, with nothing written, in bounded memory. */
function isRefused({ code, out, err, megabytes }: Measured, file: string, says: RegExp): void {
  console.log(`${file}: ${err.trim().slice(0, 300)} (${megabytes.toFixed(0)} MB)`);
  expect([code, out]).toEqual([2, '']);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(err).toContain(file);
  expect(err).toMatch(says);
  expect(megabytes).toBeLessThan(400);
  expect(existsSync(join(folder, 'out'))).toBe(false);
}

describe('refused', () => {
  test('200 MB that are no text', async () => {
    const piece = noise(MB);
    const file = fill('noise.csv', () => piece, 200);
    isRefused(await measureCommand(review(file), folder), file, /no text/);
    rmSync(join(folder, file));
  });

  test('one line of 2 GB', async () => {
    const piece = Buffer.alloc(MB, 'x');
    const file = fill('line.csv', () => piece, 2048);
    isRefused(await measureCommand(review(file), folder), file, /line/);
    rmSync(join(folder, file));
  });

  test('2 GB of zeros', async () => {
    const handle = openSync(join(folder, 'zeros.csv'), 'w');
    ftruncateSync(handle, 2048 * MB);
    closeSync(handle);
    isRefused(await measureCommand(review('zeros.csv'), folder), 'zeros.csv', /no text/);
    rmSync(join(folder, 'zeros.csv'));
  });

  test('a ZIP archive that is called .csv', async () => {
    const zip = Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 8, 0, ...noise(100_000)]);
    const file = fill('archive.csv', () => zip, 1);
    isRefused(await measureCommand(review(file), folder), file, /ZIP/);
  });

  test('ten thousand columns', async () => {
    const head = `unit,taken_at,o2_pct,${Array.from({ length: 9997 }, (_, i) => `extra ${i}`).join(',')}\n`;
    const file = fill('wide.csv', (i) => (i === 0 ? head : `B-01,2024-03-13,4.6${','.repeat(9997)}\n`), 2000);
    isRefused(await measureCommand(review(file), folder), file, /10\s000/);
  });
});

describe('survived', () => {
  test('a line of 2 GB within a table costs its own line', async () => {
    const piece = Buffer.alloc(MB, 'x');
    const file = fill(
      'inside.csv',
      (i) => (i === 0 ? HEAD + ROW : i === 2049 ? `\n${ROW.replace('B-01', 'B-02')}` : piece),
      2050,
    );
    const measured = await measureCommand(['check', file], folder);
    console.log(`${file}: ${measured.out.slice(0, 2000)} (${measured.megabytes.toFixed(0)} MB)`);
    expect([measured.code, measured.err]).toEqual([0, '']);
    expect(measured.out).toMatch(/3 .*2 .*1/);
    expect(measured.megabytes).toBeLessThan(400);
    rmSync(join(folder, file));
  });
});

describe('a file of 90 MB', () => {
  const name = 'readings.csv';
  beforeAll(() => writeReadings(join(folder, name), 1_000_000), 120_000);

  test('that grows while it is read is refused', async () => {
    const running = measureCommand(review(name), folder);
    const grow = setInterval(() => appendFileSync(join(folder, name), ROW), 20);
    const measured = await running;
    clearInterval(grow);
    isRefused({ ...measured, megabytes: 0 }, name, /changed/);
  });

  test('leaves no trace where the command is stopped meanwhile', async () => {
    const child = spawn(process.execPath, [join(ROOT, 'dist/cli/main.js'), ...review(name)], { cwd: folder });
    const ended = new Promise<number>((resolve) => {
      child.on('close', (code) => resolve(code ?? -1));
    });
    await new Promise((resolve) => setTimeout(resolve, 2500));
    const began = performance.now();
    child.kill('SIGINT');
    await ended;
    expect(performance.now() - began).toBeLessThan(2000);
    expect(readdirSync(folder).filter((entry) => entry.startsWith('.') || entry === 'out')).toEqual([]);
  });

  test('is told to be text of another kind where its end is not', async () => {
    writeFileSync(join(folder, 'mixed.csv'), HEAD + ROW.repeat(20_000));
    appendFileSync(join(folder, 'mixed.csv'), noise(2 * MB));
    const measured = await measureCommand(['check', 'mixed.csv'], folder);
    expect([measured.code, measured.err.trim().split('\n').length]).toEqual([0, 1]);
    expect(measured.megabytes).toBeLessThan(500);
  });
});
