import { SessionClient } from './session-client.ts';

/** A worker of its own for each notebook, so that opening another leaves nothing behind. */
export function startSession(): SessionClient {
  return new SessionClient(new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' }));
}
