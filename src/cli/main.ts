import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { catalogue } from '../../cells/catalogue.ts';
import { localDay } from '../../shared/quantities/local-day.ts';
import { HelperPool } from '../notebook/crews/helper-pool.ts';
import type { ToHelper } from '../notebook/crews/messages.ts';
import { serveCrews } from '../notebook/crews/serve-crews.ts';
import { runCommand } from './run-command.ts';
import { serveScribe } from './serve-scribe.ts';
import { SCRIBE, TableScribe } from './table-scribe.ts';
import { threadHelper } from './thread-helper.ts';

const file = fileURLToPath(import.meta.url);
/** Both src/cli/main.ts and dist/cli/main.js lie two folders below the project's own. */
const home = join(dirname(file), '..', '..');
/** More than these bring nothing: the work between two questions is too short. */
const MOST_HELPERS = 8;

/** As many helpers as there are processors; BETWEEN_VISITS_HELPERS=0 keeps everything in one thread. */
function helpers(): HelperPool | undefined {
  const wanted = Number(process.env['BETWEEN_VISITS_HELPERS'] ?? availableParallelism());
  const size = Math.min(Number.isFinite(wanted) ? wanted : 0, MOST_HELPERS);
  return size > 1 ? new HelperPool(size, () => threadHelper(file)) : undefined;
}

async function command(): Promise<void> {
  // A reader that has seen enough (`| head`) is no fault.
  process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
    if (cause.code !== 'EPIPE') throw cause;
  });
  const pool = helpers();
  let scribe: TableScribe | undefined;
  const scribeOf = (): TableScribe => {
    scribe ??= new TableScribe(file);
    return scribe;
  };
  process.exitCode = await runCommand(process.argv.slice(2), {
    catalogue,
    helpers: pool,
    // Without helpers everything stays in one thread.
    scribe: pool && scribeOf,
    folder: process.cwd(),
    home,
    width: process.stdout.columns ?? 100,
    environment: process.env,
    today: () => localDay(new Date()),
    out: (line) => void process.stdout.write(`${line}\n`),
    err: (line) => void process.stderr.write(`${line}\n`),
  });
  pool?.end();
  await scribe?.end();
}

/** A thread started from this very file helps the one that started it. */
function help(): void {
  const take = serveCrews(catalogue, (message) => parentPort?.postMessage(message));
  parentPort?.on('message', (message: ToHelper) => take(message));
}

if (isMainThread) await command();
else if (workerData === SCRIBE && parentPort) serveScribe(parentPort);
else help();
