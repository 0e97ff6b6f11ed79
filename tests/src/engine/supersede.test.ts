import { describe, expect, test } from 'vitest';
import { CountedGraph, constant, type Plan } from './counted-graph.ts';

describe('a newer change supersedes', () => {
  test('cancelling leaves no trace: states are those from before', async () => {
    const graph = new CountedGraph();
    const slow = (key: string, value: number): Record<string, Plan> => ({
      a: constant(1),
      b: {
        reads: ['a'],
        key,
        value: () => value,
        work: async ({ pause, progress, signal }) => {
          progress(0.5);
          while (value === 13 && !signal.aborted) await new Promise((go) => setTimeout(go, 1));
          await pause();
        },
      },
      c: { reads: ['b'], value: (x) => x },
    });
    graph.define(slow('first', 1));
    await graph.calculate();
    const before = ['a', 'b', 'c'].map((id) => graph.graph.state(id));
    graph.define(slow('second', 13));
    const running = graph.graph.calculate();
    await new Promise((go) => setTimeout(go, 5));
    expect(graph.graph.state('b')).toMatchObject({ phase: 'running', progress: 0.5, value: 1 });
    graph.graph.stop();
    expect(await running).toBe('superseded');
    const withoutReason = ['a', 'b', 'c'].map((id) => ({ ...graph.graph.state(id), reason: undefined }));
    expect(withoutReason).toEqual(before.map((state) => ({ ...state, reason: undefined })));
    graph.define(slow('first', 1));
    expect(await graph.calculate()).toEqual({});
    expect(graph.value('c')).toBe(1);
  });

  test('a second calculation takes over from the first, whatever the first still does', async () => {
    const graph = new CountedGraph();
    let release = (): void => {};
    const stuck = new Promise<void>((resolve) => {
      release = resolve;
    });
    const plan = (key: string, value: number, work?: () => Promise<void>): Record<string, Plan> => ({
      a: { key, value: () => value, ...(work && { work }) },
      b: { reads: ['a'], value: (x) => x },
    });
    graph.define(plan('deaf', 1, () => stuck));
    const first = graph.graph.calculate();
    graph.define(plan('quick', 2));
    expect(await graph.graph.calculate()).toBe('finished');
    release();
    expect(await first).toBe('superseded');
    expect([graph.value('a'), graph.value('b')]).toEqual([2, 2]);
    expect(graph.graph.state('a')?.phase).toBe('done');
  });
});
