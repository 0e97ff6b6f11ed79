// Runs every check of one kind and ends with "N passed, N failed", counted by the runners themselves.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');
const [kind = 'test', ...rest] = process.argv.slice(2);
const modules = join(root, 'node_modules');
let passed = 0;
let failed = 0;
/** Said once more at the end, where a long log is read first. */
const broken = [];

function check(name, args) {
  const started = Date.now();
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  const good = done.status === 0;
  good ? passed++ : failed++;
  if (!good) broken.push(name);
  console.log(`${good ? 'ok  ' : 'FAIL'} ${name} (${((Date.now() - started) / 1000).toFixed(1)} s)`);
}

/** A vitest run adds its own counts; a run that broke before it could count is one failure. */
function suite(args) {
  const folder = mkdtempSync(join(tmpdir(), 'between-visits-'));
  const report = join(folder, 'report.json');
  const done = spawnSync(
    process.execPath,
    [
      join(modules, 'vitest/vitest.mjs'),
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...args,
    ],
    { cwd: root, stdio: 'inherit', env: { ...process.env, TZ: 'UTC' } },
  );
  try {
    const counts = JSON.parse(readFileSync(report, 'utf8'));
    passed += counts.numPassedTests;
    failed +=
      counts.numFailedTests +
      counts.testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0).length;
    for (const file of counts.testResults)
      for (const one of file.assertionResults)
        if (one.status === 'failed') broken.push(`${relative(root, file.name)}: ${one.fullName}: ${firstLine(one)}`);
    for (const file of counts.testResults)
      if (file.status === 'failed' && file.assertionResults.length === 0)
        broken.push(`${relative(root, file.name)}: ${firstLine({ failureMessages: [file.message] })}`);
    if (done.status !== 0 && counts.numFailedTests === 0) failed = Math.max(failed, 1);
  } catch {
    failed++;
  }
  rmSync(folder, { recursive: true, force: true });
}

const firstLine = ({ failureMessages: [text = ''] }) => text.split('\n', 1)[0];

if (kind === 'test') {
  if (rest.length === 0) {
    check('types', [join(modules, 'typescript/bin/tsc'), '--noEmit']);
    check('lint', [join(modules, '@biomejs/biome/bin/biome'), 'ci', '--error-on-warnings', '.']);
  }
  suite(rest);
} else {
  suite(['--config', 'vite.config.ts', '--mode', kind, ...rest]);
}
for (const what of broken) console.log(`FAILED ${what}`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
