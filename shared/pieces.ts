import { type Crew, enlist, type Host } from './crew.ts';

/** The same work for every shard of some data, see crew.ts; `name` is its key in the kind's `crews`. */
export interface ShardedWork<Question, Part> {
  readonly name: string;
  readonly work: (shard: never) => (question: Question) => Part;
  readonly shards: readonly unknown[];
}

interface Ask {
  readonly of: ShardedWork<never, unknown>;
  readonly question: unknown;
}

/**
 * A long calculation in pieces. Between two of them whoever runs it may let others in or give it up; a piece may also be a
 * question to sharded work, whose parts come back in the order of the shards.
 */
export type Pieces<T> = Generator<Ask | undefined, T, readonly unknown[]>;

/** Puts a question to every shard, wherever the shards are. */
export function* askShards<Question, Part>(
  of: ShardedWork<Question, Part>,
  question: Question,
): Pieces<readonly Part[]> {
  return (yield { of: of as ShardedWork<never, unknown>, question }) as readonly Part[];
}

/** Runs all pieces here and now. */
export function atOnce<T>(pieces: Pieces<T>): T {
  const prepared = new Map<unknown, readonly ((question: never) => unknown)[]>();
  for (let parts: readonly unknown[] = []; ; ) {
    const { done, value } = pieces.next(parts);
    if (done) return value;
    if (!value) continue;
    const answers = prepared.get(value.of) ?? value.of.shards.map((shard) => value.of.work(shard as never));
    prepared.set(value.of, answers);
    parts = answers.map((answer) => answer(value.question as never));
  }
}

/** Runs the pieces with a pause after each, shards in the hands of helpers where the host has them; the result is atOnce's. */
export async function byPieces<T>(pieces: Pieces<T>, host: Host): Promise<T> {
  const crews = new Map<unknown, Crew<never, unknown>>();
  try {
    for (let parts: readonly unknown[] = []; ; ) {
      const { done, value } = pieces.next(parts);
      if (done) return value;
      if (value) {
        const { of, question } = value;
        const crew = crews.get(of) ?? (await enlist(host, of.name, of.work, of.shards as readonly never[]));
        crews.set(of, crew);
        parts = await crew.ask(question as never);
      } else parts = [];
      await host.pause();
    }
  } finally {
    for (const crew of crews.values()) crew.dismiss();
  }
}
