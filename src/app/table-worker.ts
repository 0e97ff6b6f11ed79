import { catalogue } from '../../cells/catalogue.ts';
import { HelperPool } from '../notebook/crews/helper-pool.ts';
import type { ToHelper } from '../notebook/crews/messages.ts';
import { serveCrews } from '../notebook/crews/serve-crews.ts';
import type { TableRequest } from './protocol.ts';
import { TableHost } from './table-host.ts';
import { workerHelper } from './worker-helper.ts';

/** The name under which this script runs as a helper of itself. */
const HELPER = 'between-visits-helper';
/** More than these bring nothing: the work between two questions is too short. */
const MOST_HELPERS = 8;

/** The worker that owns every table. It is loaded by URL as a module, so that its policy is its own and not the page's. */
function ownTables(): void {
  const size = Math.min(navigator.hardwareConcurrency || 1, MOST_HELPERS);
  const pool = size > 1 ? new HelperPool(size, () => workerHelper(location.href, HELPER)) : undefined;
  const host = new TableHost(catalogue, (reply) => postMessage(reply), pool);
  addEventListener('message', ({ data }: MessageEvent<TableRequest>) => void host.receive(data));
}

function help(): void {
  const take = serveCrews(catalogue, (message) => postMessage(message));
  addEventListener('message', ({ data }: MessageEvent<ToHelper>) => take(data));
}

if (self.name === HELPER) help();
else ownTables();
