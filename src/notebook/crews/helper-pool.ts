import type { Crew } from '../../../shared/crew.ts';
import type { FromHelper, Helper } from './messages.ts';

interface Asked {
  readonly parts: unknown[];
  left: number;
  resolve(parts: readonly unknown[]): void;
  reject(cause: Error): void;
}

/**
 * Helpers that are started when first needed and then kept. Shards are dealt out one after the other; which helper holds a
 * shard makes no difference to any result, since parts are put together in the order of the shards.
 */
export class HelperPool {
  readonly #start: () => Helper;
  readonly #size: number;
  readonly #helpers: Helper[] = [];
  readonly #asked = new Map<string, Asked>();
  #crews = 0;

  constructor(size: number, start: () => Helper) {
    this.#size = size;
    this.#start = start;
  }

  enlist(kind: string, work: string, shards: readonly unknown[], signal: AbortSignal): Crew<unknown, unknown> {
    const crew = ++this.#crews;
    const helpers = this.#some(shards.length);
    shards.forEach((shard, place) => {
      helpers[place % helpers.length].post({ to: 'prepare', crew, kind, work, place, shard });
    });
    let asks = 0;
    const dismiss = (): void => {
      for (const helper of helpers) helper.post({ to: 'dismiss', crew });
      for (const [name, { reject }] of this.#asked) if (name.startsWith(`${crew} `)) reject(abortError(signal));
    };
    signal.addEventListener('abort', dismiss, { once: true });
    return {
      ask: (question) => {
        signal.throwIfAborted();
        const ask = ++asks;
        return this.#ask(`${crew} ${ask}`, helpers, shards.length, () => {
          for (const helper of helpers) helper.post({ to: 'answer', crew, ask, question });
        });
      },
      dismiss: () => {
        signal.removeEventListener('abort', dismiss);
        dismiss();
      },
    };
  }

  /** Ends every helper; whoever still waits is told so. */
  end(): void {
    for (const helper of this.#helpers.splice(0)) helper.end();
    for (const { reject } of this.#asked.values()) reject(new Error('the helpers have ended'));
    this.#asked.clear();
  }

  #ask(name: string, helpers: readonly Helper[], shards: number, send: () => void): Promise<readonly unknown[]> {
    for (const helper of helpers) helper.hold(true);
    const done = new Promise<readonly unknown[]>((resolve, reject) => {
      this.#asked.set(name, { parts: new Array(shards), left: helpers.length, resolve, reject });
      send();
    });
    return done.finally(() => {
      this.#asked.delete(name);
      if (this.#asked.size === 0) for (const helper of this.#helpers) helper.hold(false);
    });
  }

  #some(shards: number): readonly Helper[] {
    const wanted = Math.max(1, Math.min(this.#size, shards));
    while (this.#helpers.length < wanted) {
      const helper = this.#start();
      helper.onMessage((message) => this.#take(message));
      helper.onFault((fault) => {
        for (const { reject } of this.#asked.values()) reject(new Error(fault));
      });
      this.#helpers.push(helper);
    }
    return this.#helpers.slice(0, wanted);
  }

  #take(message: FromHelper): void {
    const asked = this.#asked.get(`${message.crew} ${message.ask}`);
    if (!asked) return;
    if ('fault' in message) {
      asked.reject(new Error(message.fault));
      return;
    }
    for (const { place, part } of message.parts) asked.parts[place] = part;
    asked.left--;
    if (asked.left === 0) asked.resolve(asked.parts);
  }
}

function abortError(signal: AbortSignal): Error {
  return signal.reason instanceof Error ? signal.reason : new DOMException('The crew was dismissed.', 'AbortError');
}
