// Plain Node, no packages: it runs before anything is installed.
// node src/cli/run.mjs <start|test|verify|bench|build|review|calculate|check|...> [arguments]
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const [command = 'start', ...rest] = process.argv.slice(2);
const SOURCES = ['shared', 'cells', 'src', 'package.json', 'package-lock.json', 'vite.config.ts', 'tsconfig.json'];

const say = (text) => process.stderr.write(`${text}\n`);

/** Runs a program with its chatter on stderr, so that stdout carries only what the command itself prints. */
function run(program, args, { quiet = false } = {}) {
  const done = spawnSync(program, args, {
    cwd: root,
    stdio: ['ignore', quiet ? 'pipe' : 2, quiet ? 'pipe' : 2],
    encoding: 'utf8',
  });
  if (done.status === 0) return;
  if (quiet) say(`${done.stdout ?? ''}${done.stderr ?? ''}`.trim());
  say(
    `${program} ${args.join(' ')} did not finish: it ended with ${done.status ?? done.error?.message ?? done.signal}.`,
  );
  process.exit(2);
}

const bin = (name) => join(root, 'node_modules', name);

/** The youngest change below a path, in ms. */
function youngest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path, { withFileTypes: true }).reduce(
    (latest, entry) => Math.max(latest, youngest(join(path, entry.name))),
    stat.mtimeMs,
  );
}

function install() {
  const lock = join(root, 'package-lock.json');
  const installed = join(root, 'node_modules', '.package-lock.json');
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs - 1) return;
  if (existsSync(installed) && sameVersions(lock, installed)) return;
  say('Installing packages (once) ...');
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
}

/** A fresh checkout may be younger than its packages; what counts is that every installed version is the locked one. */
function sameVersions(lock, installed) {
  const wanted = JSON.parse(readFileSync(lock, 'utf8')).packages;
  const present = JSON.parse(readFileSync(installed, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([path, entry]) => path === '' || entry.optional || present[path]?.version === entry.version,
  );
}

function build(target) {
  const stamp = join(root, 'dist', `${target}.stamp`);
  if (existsSync(stamp) && SOURCES.every((path) => youngest(join(root, path)) <= statSync(stamp).mtimeMs)) return;
  say(target === 'cli' ? 'Building the command line ...' : 'Building the page ...');
  const started = new Date();
  run(
    process.execPath,
    [bin('vite/bin/vite.js'), 'build', '--logLevel', 'error', ...(target === 'cli' ? ['--mode', 'cli'] : [])],
    { quiet: true },
  );
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, `${started.toISOString()}\n`);
}

function hand(program, args) {
  const done = spawnSync(program, args, { cwd: process.cwd(), stdio: 'inherit' });
  process.exit(done.status ?? 1);
}

install();
switch (command) {
  case 'build':
    build('app');
    build('cli');
    break;
  case 'test':
  case 'verify':
  case 'bench':
    hand(process.execPath, [join(root, 'tests', 'run.mjs'), command, ...rest]);
    break;
  case 'start':
    build('cli');
    build('app');
    hand(process.execPath, ['--enable-source-maps', join(root, 'dist', 'cli', 'main.js'), command, ...rest]);
    break;
  default:
    build('cli');
    hand(process.execPath, [join(root, 'dist', 'cli', 'main.js'), command, ...rest]);
}
