import { describe, expect, test } from 'vitest';
import { askShards, atOnce, byPieces, type Pieces, type ShardedWork } from '../../shared/pieces.ts';

const work =
  (shard: readonly number[]) =>
  (factor: number): number =>
    shard.reduce((sum, value) => sum + factor * value, 0);
const sums: ShardedWork<number, number> = { name: 'sums', work, shards: [[1, 2], [3], [4, 5, 6]] };

/** Counts its pieces, and asks the shards twice on the way. */
function* calculation(done: string[]): Pieces<number> {
  done.push('first');
  yield;
  const once = yield* askShards(sums, 1);
  done.push('once');
  yield;
  const twice = yield* askShards(sums, 2);
  done.push('twice');
  return [...once, ...twice].reduce((sum, part) => sum + part, 0);
}

describe('a calculation in pieces', () => {
  test('comes to the same at once, by pieces, and with helpers', async () => {
    const expected = 3 * (1 + 2 + 3 + 4 + 5 + 6);
    expect(atOnce(calculation([]))).toBe(expected);
    expect(await byPieces(calculation([]), { pause: async () => {} })).toBe(expected);
    const enlisted: string[] = [];
    let dismissed = 0;
    const helpers = async (name: string, shards: readonly unknown[]) => {
      enlisted.push(name);
      const answers = (shards as number[][]).map(work);
      return { ask: async (question: number) => answers.map((one) => one(question)), dismiss: () => dismissed++ };
    };
    expect(await byPieces(calculation([]), { pause: async () => {}, helpers })).toBe(expected);
    // The shards are handed over once, however often they are asked.
    expect([enlisted, dismissed]).toEqual([['sums'], 1]);
  });

  test('is given up at the next pause, and its helpers are let go', async () => {
    for (const last of [0, 1, 2, 3]) {
      const done: string[] = [];
      let [pauses, dismissed] = [0, 0];
      const host = {
        pause: async () => {
          if (pauses++ === last) throw new DOMException('newer', 'AbortError');
        },
        helpers: async () => ({ ask: async () => [0, 0, 0], dismiss: () => dismissed++ }),
      };
      await expect(byPieces(calculation(done), host)).rejects.toThrow('newer');
      expect(done).toEqual(['first', 'once', 'twice'].slice(0, [1, 1, 2, 2][last]));
      expect(dismissed).toBe(last === 0 ? 0 : 1);
    }
  });
});
