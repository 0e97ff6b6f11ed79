import type { PageSession } from './page-session.ts';
import { SessionClient } from './session-client.ts';

/** Opens a notebook in a worker of its own, which ends with it, or at once where the notebook cannot be opened. */
export async function openSession(open: (session: SessionClient) => Promise<void>): Promise<PageSession> {
  const worker = new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' });
  const session = Object.assign(new SessionClient(worker), { close: () => worker.terminate() });
  try {
    await open(session);
    return session;
  } catch (cause) {
    session.close();
    throw cause;
  }
}
