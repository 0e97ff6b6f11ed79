/**
 * Heavy work is cut into shards whose borders follow from the data alone, never from the number of processors, so that the
 * results are the same bytes on every machine. A work takes one shard, prepares it once, and then answers questions about
 * it; all three are plain data. It is pure: the same shard and question give the same answer wherever they run.
 */
export type ShardWork = (shard: never) => (question: never) => unknown;

/** What enlisting needs of a CellContext. */
export interface Host {
  pause(): Promise<void>;
  helpers?(work: string, shards: readonly unknown[]): Promise<unknown>;
}

/** Shards in the hands of helpers. */
export interface Crew<Question, Part> {
  /** Puts one question to every shard; the parts come in the order of the shards. */
  ask(question: Question): Promise<readonly Part[]>;
  /** Lets the shards go. */
  dismiss(): void;
}

/**
 * A crew for the shards: helper workers where the host has them and there is more than one shard, else the same work here, a
 * shard at a time. `name` is the key of `work` in the kind's `crews`.
 */
export async function enlist<Shard, Question, Part>(
  context: Host,
  name: string,
  work: (shard: Shard) => (question: Question) => Part,
  shards: readonly Shard[],
): Promise<Crew<Question, Part>> {
  if (context.helpers && shards.length > 1) return (await context.helpers(name, shards)) as Crew<Question, Part>;
  const prepared = shards.map(work);
  return {
    async ask(question) {
      const parts: Part[] = [];
      for (const answer of prepared) {
        parts.push(answer(question));
        await context.pause();
      }
      return parts;
    },
    dismiss() {},
  };
}
