import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../src/app/built-page.ts';
import { measureCommand } from './measured-command.ts';
import { PLAIN, type Style, writeReadings } from './write-readings.ts';

/**
 * Bringing readings in, beside PapaParse's own streamed read of the same file into nothing: bundled as the command line is,
 * each round a process of its own, in turn.
 */
const READINGS = Number(process.env['BENCH_READINGS'] ?? 1_000_000);
const ROUNDS = Number(process.env['BENCH_ROUNDS'] ?? 5);
const folder = mkdtempSync(join(tmpdir(), 'import-bench-'));
const MB = 1 << 20;

interface Round {
  readonly seconds: number;
  readonly processorSeconds: number;
  readonly rows: number;
  /** Bytes of the resulting columns, and by how much the process grew at most. */
  readonly columns: number;
  readonly grown: number;
}

beforeAll(async () => {
  const input = { main: join(import.meta.dirname, 'import-run.ts') };
  await build({
    configFile: join(ROOT, 'vite.config.ts'),
    root: ROOT,
    mode: 'cli',
    logLevel: 'error',
    build: { outDir: folder, emptyOutDir: false, rollupOptions: { input } },
  });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(file: string, what: 'own' | 'peer'): Round {
  const done = spawnSync(process.execPath, ['--expose-gc', join(folder, 'main.js'), file, what], { encoding: 'utf8' });
  expect([done.status, done.stderr]).toEqual([0, '']);
  return JSON.parse(done.stdout) as Round;
}

const middle = (rounds: readonly Round[], of: (round: Round) => number): number =>
  rounds.map(of).sort((a, b) => a - b)[rounds.length >> 1];

describe(`${READINGS.toLocaleString('en-US')} readings, ${ROUNDS} rounds`, () => {
  test.each<[string, Style, string]>([
    ['plain', PLAIN, 'goal 2.0'],
    ['texts in quotes, visit numbers', { ...PLAIN, quoted: true, visits: true }, 'no goal'],
    ['semicolons, decimal comma, d.m.y', { ...PLAIN, german: true }, 'no goal'],
  ])('%s', async (name, style, goal) => {
    const file = join(folder, 'readings.csv');
    await writeReadings(file, READINGS, style);
    const [peer, own]: [Round[], Round[]] = [[], []];
    for (let round = 0; round < ROUNDS; round++) {
      peer.push(run(file, 'peer'));
      own.push(run(file, 'own'));
      expect(own[round].rows).toBe(READINGS);
    }
    const [seconds, peerSeconds] = [own, peer].map((rounds) => middle(rounds, (round) => round.seconds));
    const [processor, peerProcessor] = [own, peer].map((rounds) => middle(rounds, (round) => round.processorSeconds));
    const columns = own[0].columns / MB;
    const above = middle(own, ({ grown }) => grown) / MB - columns;
    console.log(
      `${name}, ${(statSync(file).size / 1e6).toFixed(0)} MB: ${seconds.toFixed(2)} s, PapaParse into nothing ${peerSeconds.toFixed(2)} s, ` +
        `ratio ${(seconds / peerSeconds).toFixed(2)} (${goal}); processor ${processor.toFixed(2)} and ${peerProcessor.toFixed(2)} s; ` +
        `columns ${columns.toFixed(0)} MB, ${above.toFixed(0)} MB above them (goal 350); load ${loadavg()[0].toFixed(1)}`,
    );
  });
});

test('5,000,000 readings in one import on the command line: at most 2.5 GB', async () => {
  const done = spawnSync(process.execPath, [join(ROOT, 'src/cli/run.mjs'), 'build'], { cwd: ROOT, encoding: 'utf8' });
  expect(done.status).toBe(0);
  await writeReadings(join(folder, 'readings.csv'), 5 * READINGS);
  const measured = await measureCommand(['check', 'readings.csv'], folder);
  expect([measured.code, measured.err]).toEqual([0, '']);
  console.log(`5,000,000 readings: ${measured.seconds.toFixed(1)} s, ${measured.megabytes.toFixed(0)} MB (goal 2500)`);
  expect(measured.megabytes).toBeLessThan(2500);
});
