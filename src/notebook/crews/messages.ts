/** To a helper. A crew is known by its number, a shard by its place among the crew's. */
export type ToHelper =
  | {
      readonly to: 'prepare';
      readonly crew: number;
      readonly kind: string;
      readonly work: string;
      readonly place: number;
      readonly shard: unknown;
    }
  | { readonly to: 'answer'; readonly crew: number; readonly ask: number; readonly question: unknown }
  | { readonly to: 'dismiss'; readonly crew: number };

/** From a helper: the parts of its shards for one question, or what went wrong with them. */
export type FromHelper =
  | {
      readonly crew: number;
      readonly ask: number;
      readonly parts: readonly { readonly place: number; readonly part: unknown }[];
    }
  | { readonly crew: number; readonly ask: number; readonly fault: string };

/** A helper as its owner sees it: a worker of the browser, or a thread of Node. */
export interface Helper {
  post(message: ToHelper): void;
  onMessage(listener: (message: FromHelper) => void): void;
  onFault(listener: (fault: string) => void): void;
  /** Whether the process must stay alive for this helper. */
  hold(wanted: boolean): void;
  end(): void;
}
