import { describe, expect, test } from 'vitest';
import type { CellKind } from '../../../../shared/cell.ts';
import { type Crew, enlist } from '../../../../shared/crew.ts';
import { HelperPool } from '../../../../src/notebook/crews/helper-pool.ts';
import type { FromHelper, Helper } from '../../../../src/notebook/crews/messages.ts';
import { serveCrews } from '../../../../src/notebook/crews/serve-crews.ts';

type Shard = { readonly values: Float64Array };

/** Sums a shard's values times the question; a question of 13 is more than it bears. */
const work =
  ({ values }: Shard) =>
  (factor: number): number => {
    if (factor === 13) throw new RangeError('13 is too much');
    return values.reduce((sum, value) => sum + value * factor, 0);
  };
const catalogue = new Map([['sum', { name: 'sum', crews: { sum: work } } as unknown as CellKind]]);

/** A helper in this very thread, whose messages are copied as between threads. */
function nearHelper(started: { count: number }): Helper {
  started.count++;
  let take = (_: FromHelper): void => {};
  const receive = serveCrews(catalogue, (message) => queueMicrotask(() => take(structuredClone(message))));
  return {
    post: (message) => {
      const copy = structuredClone(message);
      queueMicrotask(() => receive(copy));
    },
    onMessage: (listener) => {
      take = listener;
    },
    onFault() {},
    hold() {},
    end() {},
  };
}

const shards: Shard[] = Array.from({ length: 7 }, (_, at) => ({
  values: Float64Array.from({ length: 100 }, (__, i) => 1 / (i + at + 1)),
}));

function hostOf(size: number, controller = new AbortController(), started = { count: 0 }) {
  const pool = new HelperPool(size, () => nearHelper(started));
  return {
    pool,
    context: {
      pause: async () => {},
      helpers: async (name: string, list: readonly unknown[]) => pool.enlist('sum', name, list, controller.signal),
    },
  };
}

const sums = async (crew: Crew<number, number>): Promise<(readonly number[])[]> => [
  await crew.ask(1),
  await crew.ask(0.1),
];

describe('a crew', () => {
  test.each([1, 2, 3, 16])(
    'of %i helpers gives the very parts that one thread gives, in the order of the shards',
    async (size) => {
      const alone = await sums(await enlist({ pause: async () => {} }, 'sum', work, shards));
      const crew = await enlist(hostOf(size).context, 'sum', work, shards);
      expect(await sums(crew)).toEqual(alone);
      crew.dismiss();
    },
  );

  test('starts helpers only when there is something to share, and no more than shards', async () => {
    const started = { count: 0 };
    const { context } = hostOf(16, new AbortController(), started);
    await (await enlist(context, 'sum', work, shards.slice(0, 1))).ask(1);
    expect(started.count).toBe(0);
    await (await enlist(context, 'sum', work, shards.slice(0, 2))).ask(1);
    expect(started.count).toBe(2);
  });

  test('a fault in a shard is the fault of the question, and the crew can be asked again', async () => {
    const crew = await enlist(hostOf(2).context, 'sum', work, shards);
    await expect(crew.ask(13)).rejects.toThrow('13 is too much');
    expect(await crew.ask(1)).toHaveLength(7);
  });

  test('a work that the kind does not have is named', async () => {
    const crew = await enlist(hostOf(2).context, 'product', work, shards);
    await expect(crew.ask(1)).rejects.toThrow(/no work named product/);
  });

  test('ends with the calculation that it was for', async () => {
    const controller = new AbortController();
    const crew = await enlist(hostOf(2, controller).context, 'sum', work, shards);
    const asked = crew.ask(1);
    controller.abort(new DOMException('newer', 'AbortError'));
    await expect(asked).rejects.toThrow('newer');
    await expect(async () => crew.ask(1)).rejects.toThrow('newer');
  });

  test('two crews at once do not mix', async () => {
    const { context } = hostOf(2);
    const [one, other] = [
      await enlist(context, 'sum', work, shards),
      await enlist(context, 'sum', work, shards.slice(0, 3)),
    ];
    const [first, second] = await Promise.all([one.ask(2), other.ask(3)]);
    expect([first.length, second.length]).toEqual([7, 3]);
    expect(first[0]).toBe(work(shards[0])(2));
    expect(second[2]).toBe(work(shards[2])(3));
  });
});
