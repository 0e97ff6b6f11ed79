import { Worker } from 'node:worker_threads';
import type { FromHelper, Helper } from '../notebook/crews/messages.ts';

/** A thread of Node that runs the given file, which serves crews when it finds itself in a thread. */
export function threadHelper(file: string): Helper {
  const thread = new Worker(file);
  thread.unref();
  return {
    post: (message) => thread.postMessage(message),
    onMessage: (listener) => void thread.on('message', (message: FromHelper) => listener(message)),
    onFault: (listener) =>
      void thread.on('error', (cause) => listener(cause instanceof Error ? cause.message : String(cause))),
    hold: (wanted) => (wanted ? thread.ref() : thread.unref()),
    end: () => void thread.terminate(),
  };
}
