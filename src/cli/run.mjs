// Plain Node, no packages: it runs before anything is installed.
// node src/cli/run.mjs <start|test|verify|bench|build|review|calculate|check|...> [arguments]
import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const [command = 'start', ...rest] = process.argv.slice(2);
const SOURCES = ['shared', 'cells', 'src', 'package.json', 'package-lock.json', 'vite.config.ts', 'tsconfig.json'];
const PARTS = { cli: SOURCES, app: [...SOURCES, 'sample-data'] };
const OLDEST_NODE = 20;
/** A build takes seconds; one that has held the lock for minutes was killed. */
const STALE_LOCK_MS = 300_000;
const PARENT_WATCH_MS = 250;

const say = (text) => process.stderr.write(`${text}\n`);
/**
 * Installing and building take a minute, which `npm start` says on stdout, so that nobody takes it for hanging. Of the other
 * commands a program may read stdout and stderr, and finds results and faults there and nothing else.
 */
const tell = (text) => {
  if (command === 'start') process.stdout.write(`${text}\n`);
  else if (process.stderr.isTTY) say(text);
};

function stop(text) {
  say(text);
  process.exit(2);
}

/** Runs a program with its chatter on stderr, so that stdout carries only what the command itself prints. */
function run(program, args, { quiet = false } = {}) {
  const done = spawnSync(program, args, {
    cwd: root,
    stdio: ['ignore', quiet ? 'pipe' : 2, quiet ? 'pipe' : 2],
    encoding: 'utf8',
    // A build that a test asks for (NODE_ENV=test) would carry the development halves of the libraries.
    ...(quiet ? { env: { ...process.env, NODE_ENV: 'production' } } : {}),
    // On Windows npm is a script, which only a shell runs.
    shell: process.platform === 'win32' && program === 'npm',
  });
  if (done.status === 0) return '';
  if (quiet) say(`${done.stdout ?? ''}${done.stderr ?? ''}`.trim());
  return `${program} ${args.join(' ')} did not finish: it ended with ${done.status ?? done.error?.message ?? done.signal}.`;
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

function installed() {
  const lock = join(root, 'package-lock.json');
  const present = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(present)) return false;
  return statSync(present).mtimeMs >= statSync(lock).mtimeMs - 1 || sameVersions(lock, present);
}

/** A fresh checkout may be younger than its packages; what counts is that every installed version is the locked one. */
function sameVersions(lock, installed) {
  const wanted = JSON.parse(readFileSync(lock, 'utf8')).packages;
  const present = JSON.parse(readFileSync(installed, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([path, entry]) => path === '' || entry.optional || present[path]?.version === entry.version,
  );
}

function install() {
  if (installed()) return;
  alone('install', installed, () => {
    tell('Installing packages (once, about a minute) ...');
    return run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']);
  });
}

const stampOf = (target) => join(root, 'dist', `${target}.stamp`);

function built(target) {
  const stamp = stampOf(target);
  if (!existsSync(stamp) || !existsSync(join(root, 'dist', target))) return false;
  const { mtimeMs } = statSync(stamp);
  return PARTS[target].every((path) => !existsSync(join(root, path)) || youngest(join(root, path)) <= mtimeMs);
}

function build(target) {
  if (built(target)) return;
  alone(
    target,
    () => built(target),
    () => {
      tell(target === 'cli' ? 'Building the command line ...' : 'Building the page ...');
      const started = new Date();
      const fresh = join(root, 'dist', `${target}.new`);
      const mode = target === 'cli' ? ['--mode', 'cli'] : [];
      const trouble = run(
        process.execPath,
        [bin('vite/bin/vite.js'), 'build', '--logLevel', 'error', '--outDir', fresh, '--emptyOutDir', ...mode],
        { quiet: true },
      );
      if (trouble) return trouble;
      // Whoever reads the old build meanwhile has it whole until the new one is whole.
      const old = join(root, 'dist', `${target}.old`);
      rmSync(old, { recursive: true, force: true });
      if (existsSync(join(root, 'dist', target))) renameSync(join(root, 'dist', target), old);
      renameSync(fresh, join(root, 'dist', target));
      rmSync(old, { recursive: true, force: true });
      // Dated at the start, so that what changed during the build counts as younger.
      writeFileSync(stampOf(target), `${started.toISOString()}\n`);
      utimesSync(stampOf(target), started, started);
      return '';
    },
  );
}

/** Does a job unless another process is at it; then waits for that one and sees whether anything is left to do. */
function alone(name, done, job) {
  mkdirSync(join(root, 'dist'), { recursive: true });
  const lock = join(root, 'dist', `${name}.lock`);
  while (!take(lock)) {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    if (!existsSync(lock) && done()) return;
  }
  let trouble = '';
  try {
    if (!done()) trouble = job();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
  if (trouble) stop(trouble);
}

function take(lock) {
  try {
    mkdirSync(lock);
    writeFileSync(join(lock, 'pid'), String(process.pid));
    return true;
  } catch (cause) {
    if (cause.code !== 'EEXIST') stop(`${join(root, 'dist')} cannot be written to (${cause.code}); make it writable.`);
  }
  if (abandoned(lock)) rmSync(lock, { recursive: true, force: true });
  return false;
}

function abandoned(lock) {
  try {
    if (Date.now() - statSync(lock).mtimeMs > STALE_LOCK_MS) return true;
    process.kill(Number(readFileSync(join(lock, 'pid'), 'utf8')), 0);
    return false;
  } catch (cause) {
    return cause.code === 'ESRCH';
  }
}

/** npm moves to the project's folder and keeps in INIT_CWD where the user was: that is where their paths are meant from. */
function userFolder() {
  const { INIT_CWD } = process.env;
  return INIT_CWD && resolve(process.cwd()) === resolve(root) && existsSync(INIT_CWD) ? INIT_CWD : process.cwd();
}

/** Hands over to a program and ends as it ends; signals are passed on, and the program decides. */
function hand(args, cwd) {
  const child = spawn(process.execPath, args, { cwd, stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  endWithParent(child);
  child.on('error', (cause) => stop(`${process.execPath} could not be started: ${cause.message}.`));
  child.on('exit', (status, signal) => process.exit(status ?? (signal ? 130 : 1)));
}

/** npm passes a signal on to the shell between it and this program, and that shell ends without telling: so look whether it is gone. */
function endWithParent(child) {
  if (!process.env.npm_lifecycle_event) return;
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    child.kill('SIGTERM');
  }, PARENT_WATCH_MS);
  watch.unref();
}

if (Number(process.versions.node.split('.')[0]) < OLDEST_NODE)
  stop(
    `Node ${process.versions.node} is too old; install Node ${OLDEST_NODE} or newer (https://nodejs.org) and try again.`,
  );

install();
switch (command) {
  case 'build':
    build('app');
    build('cli');
    break;
  case 'test':
  case 'verify':
  case 'bench':
    hand([join(root, 'tests', 'run.mjs'), command, ...rest], process.cwd());
    break;
  case 'start':
    build('cli');
    build('app');
    hand([join(root, 'dist', 'cli', 'main.js'), command, ...rest], userFolder());
    break;
  default:
    build('cli');
    hand([join(root, 'dist', 'cli', 'main.js'), command, ...rest], userFolder());
}
