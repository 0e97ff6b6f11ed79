import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeFleet } from './fleet.ts';
import { type Measured, measureCommand } from './measured-command.ts';

const ROOT = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'between-visits-bench-'));
beforeAll(() => {
  const done = spawnSync(process.execPath, [join(ROOT, 'src/cli/run.mjs'), 'build'], { stdio: 'inherit' });
  expect(done.status).toBe(0);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function tell(what: string, { seconds, processorSeconds, megabytes }: Measured): void {
  console.log(
    `${what}: ${seconds.toFixed(2)} s (${processorSeconds.toFixed(2)} s of processor), ${megabytes.toFixed(0)} MB at most`,
  );
}

describe('review', () => {
  test('of 100,000 readings (about 4,200 units): at most 8 s and 700 MB', async () => {
    const fleet = makeFleet(100_000, 20_261_125);
    writeFileSync(join(folder, 'readings.csv'), fleet.readings);
    writeFileSync(join(folder, 'register.csv'), fleet.register);
    const words = [
      'review',
      '--readings',
      'readings.csv',
      '--register',
      'register.csv',
      '--as-of',
      '2026-03-31',
      '--out',
      'out',
    ];
    const measured = await measureCommand(words, folder);
    tell(`${fleet.rows} readings of ${fleet.units} units`, measured);
    console.log(measured.out, measured.err);
    console.log(`report.html: ${(statSync(join(folder, 'out/report.html')).size / 1e6).toFixed(2)} MB`);
    expect(measured.code).toBe(0);
    expect(measured.seconds).toBeLessThan(8);
    expect(measured.megabytes).toBeLessThan(700);
  });

  test('of the sample campus: at most 3 s from a warm build', async () => {
    const words = ['calculate', join(ROOT, 'sample-data/campus-review.json'), '--out', 'sample'];
    const measured = await measureCommand(words, folder);
    tell('sample campus', measured);
    expect(measured.code).toBe(0);
    expect(measured.seconds).toBeLessThan(3);
  });
});
