import type { FromHelper, Helper } from '../notebook/crews/messages.ts';

/** A worker of the worker: the same script under a name by which it knows that it helps. */
export function workerHelper(script: string, name: string): Helper {
  const worker = new Worker(script, { type: 'module', name });
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (listener) => worker.addEventListener('message', ({ data }: MessageEvent<FromHelper>) => listener(data)),
    onFault: (listener) => worker.addEventListener('error', ({ message }) => listener(message || 'a helper stopped')),
    hold() {},
    end: () => worker.terminate(),
  };
}
