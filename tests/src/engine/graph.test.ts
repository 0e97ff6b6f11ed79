import { describe, expect, test } from 'vitest';
import { ask } from '../../../shared/outcome.ts';
import { Graph } from '../../../src/engine/graph.ts';
import { CountedGraph, constant, failing, type Plan } from './counted-graph.ts';

const sum: Plan['value'] = (...inputs) => inputs.reduce((total, input) => total + input, 0);

describe('a change reaches its readers and nobody else', () => {
  //   a ──┬── b ──┐
  //       └── c ──┴── d        e
  const diamond = (a: number): Record<string, Plan> => ({
    a: constant(a),
    b: { reads: ['a'], value: (x) => x + 1 },
    c: { reads: ['a'], value: (x) => x * 2 },
    d: { reads: ['b', 'c'], value: sum },
    e: constant(100),
  });

  test('a diamond is calculated once a node', async () => {
    const graph = new CountedGraph();
    graph.define(diamond(1));
    expect(await graph.calculate()).toEqual({ a: 1, b: 1, c: 1, d: 1, e: 1 });
    expect(graph.value('d')).toBe(4);
    graph.define(diamond(2));
    expect(await graph.calculate()).toEqual({ a: 1, b: 1, c: 1, d: 1 });
    expect(graph.value('d')).toBe(7);
  });

  test('nothing is calculated when nothing changed', async () => {
    const graph = new CountedGraph();
    graph.define(diamond(1));
    await graph.calculate();
    graph.define(diamond(1));
    expect(await graph.calculate()).toEqual({});
    expect(graph.graph.state('d')?.reason).toEqual({ kind: 'untouched' });
  });

  test('a node in the middle leaves what stands above and beside it alone', async () => {
    const graph = new CountedGraph();
    graph.define(diamond(1));
    await graph.calculate();
    graph.define({ ...diamond(1), b: { reads: ['a'], key: 'plus ten', value: (x) => x + 10 } });
    expect(await graph.calculate()).toEqual({ b: 1, d: 1 });
  });
});

describe('an equal result stops the wave', () => {
  //   a ── parity ── reader
  const chain = (a: number): Record<string, Plan> => ({
    a: constant(a),
    parity: { reads: ['a'], value: (x) => x % 2 },
    reader: { reads: ['parity'], value: (x) => x + 0.5 },
  });

  test('where the value comes out equal, its readers are left alone and say so', async () => {
    const graph = new CountedGraph();
    graph.define(chain(1));
    await graph.calculate();
    const before = graph.graph.state('parity')?.version;
    graph.define(chain(3));
    expect(await graph.calculate()).toEqual({ a: 1, parity: 1 });
    expect(graph.graph.state('parity')?.version).toBe(before);
    expect(graph.graph.state('reader')?.reason).toEqual({ kind: 'untouched' });
  });

  test('a reader that named parts is left alone when only other parts change', async () => {
    interface Pair {
      left: number;
      right: number;
    }
    const counts: string[] = [];
    const graph = new Graph<Pair>({
      versions: ({ left, right }) => ({
        whole: `${left} ${right}`,
        parts: new Map([
          ['left', String(left)],
          ['right', String(right)],
        ]),
      }),
    });
    const define = (left: number, right: number): void =>
      graph.define([
        {
          id: 'pair',
          key: `${left} ${right}`,
          reads: [],
          compute: () => ({ status: 'value', value: { left, right } }),
        },
        {
          id: 'reader',
          key: '',
          reads: [{ node: 'pair', parts: ['left'] }],
          compute: (inputs) => {
            counts.push('reader');
            return { status: 'value', value: inputs.get('pair') as Pair };
          },
        },
      ]);
    define(1, 1);
    await graph.calculate();
    define(1, 2);
    await graph.calculate();
    expect(counts).toEqual(['reader']);
    expect(graph.state('reader')?.reason).toEqual({ kind: 'equal', nodes: ['pair'] });
    define(2, 2);
    await graph.calculate();
    expect(counts).toEqual(['reader', 'reader']);
  });
});

describe('what was calculated before is kept', () => {
  const chain = (a: number): Record<string, Plan> => ({
    a: constant(a),
    b: { reads: ['a'], value: (x) => x * x },
    c: { reads: ['b'], value: (x) => x - 1 },
  });

  test('going back and forth calculates nothing', async () => {
    const graph = new CountedGraph();
    for (const a of [1, 2, 3]) {
      graph.define(chain(a));
      await graph.calculate();
    }
    for (const a of [2, 1, 2, 3]) {
      graph.define(chain(a));
      expect(await graph.calculate()).toEqual({});
      expect(graph.value('c')).toBe(a * a - 1);
    }
    expect(graph.graph.state('c')?.reason).toEqual({ kind: 'kept' });
  });

  test('the store is bounded and says what it let go', async () => {
    const graph = new CountedGraph({ limitResults: 4 });
    for (const a of [1, 2, 3]) {
      graph.define(chain(a));
      await graph.calculate();
    }
    const { results, letGo } = graph.graph.store();
    expect(results).toBe(4);
    expect([...letGo.values()].reduce((all, one) => all + one, 0)).toBe(5);
    graph.define(chain(1));
    expect(await graph.calculate()).toEqual({ a: 1, b: 1, c: 1 });
    expect(graph.graph.state('c')?.reason).toEqual({ kind: 'let-go' });
  });

  test('buffers that results share count once', async () => {
    const graph = new Graph<{ values: Float64Array }>({ limitBytes: 1_000_000 });
    const shared = new Float64Array(1000);
    graph.define(
      ['a', 'b', 'c'].map((id) => ({
        id,
        key: id,
        reads: [],
        compute: () => ({ status: 'value', value: { values: shared.subarray(id.charCodeAt(0) - 97) } }) as const,
      })),
    );
    await graph.calculate();
    expect(graph.store()).toMatchObject({ results: 3, bytes: 8000 });
  });
});

describe('a failure is a value', () => {
  //   a ── b ── c ── d      other ── beside
  const chain = (b: Plan['value']): Record<string, Plan> => ({
    a: constant(1),
    b: { reads: ['a'], value: b },
    c: { reads: ['b'], value: (x) => x + 1 },
    d: { reads: ['c'], value: (x) => x + 1 },
    other: constant(5),
    beside: { reads: ['other'], value: (x) => x },
  });

  test('it stops its readers only, which name the one they wait for', async () => {
    const graph = new CountedGraph();
    graph.define(chain(failing('the pump stopped')));
    await graph.calculate();
    expect(graph.graph.state('b')).toMatchObject({ phase: 'failed', message: 'the pump stopped', value: undefined });
    expect(graph.graph.state('c')).toMatchObject({ phase: 'waiting', waitsFor: ['b'] });
    expect(graph.graph.state('d')).toMatchObject({ phase: 'waiting', waitsFor: ['b'] });
    expect(graph.value('beside')).toBe(5);
  });

  test('it keeps the last good result, marked stale, until it is good again', async () => {
    const graph = new CountedGraph();
    graph.define(chain((x) => x + 1));
    await graph.calculate();
    graph.define(chain(failing('no')));
    await graph.calculate();
    for (const [id, value] of Object.entries({ b: 2, c: 3, d: 4 }))
      expect(graph.graph.state(id)).toMatchObject({ value, stale: true });
    const version = graph.graph.state('d')?.version;
    graph.define(chain((x) => x + 1));
    expect(await graph.calculate()).toEqual({});
    for (const id of ['b', 'c', 'd']) expect(graph.graph.state(id)).toMatchObject({ phase: 'done', stale: false });
    expect(graph.graph.state('d')?.version).toBe(version);
  });

  test('what a node throws is its error, and is not calculated again while nothing changes', async () => {
    const graph = new CountedGraph();
    const broken = chain(() => {
      throw new RangeError('row 7 is not there');
    });
    graph.define(broken);
    await graph.calculate();
    expect(graph.graph.state('b')).toMatchObject({ phase: 'failed', message: 'row 7 is not there' });
    graph.define(broken);
    expect(await graph.calculate()).toEqual({});
  });

  test('a question stops its readers and holds what is asked', async () => {
    const question = { message: 'Which order?', remedy: 'Say so.', parameter: 'order', options: [] };
    const graph = new CountedGraph();
    graph.define(chain(() => ask(question)));
    await graph.calculate();
    expect(graph.graph.state('b')).toMatchObject({ phase: 'asking', question });
    expect(graph.graph.state('d')).toMatchObject({ phase: 'waiting', waitsFor: ['b'] });
  });

  test('two failures above a node are both named', async () => {
    const graph = new CountedGraph();
    graph.define({
      a: { key: 'a', value: failing('a') },
      b: { key: 'b', value: failing('b') },
      c: { reads: ['a', 'b'], value: sum },
    });
    await graph.calculate();
    expect(graph.graph.state('c')?.waitsFor).toEqual(['a', 'b']);
  });
});

describe('cycles and missing nodes are known before anything runs', () => {
  test('a cycle is named by its path, its readers wait, the rest goes on', async () => {
    const graph = new CountedGraph();
    const round = {
      a: { reads: ['c'], value: sum },
      b: { reads: ['a'], value: sum },
      c: { reads: ['b'], value: sum },
      reader: { reads: ['b'], value: sum },
      free: constant(1),
    };
    graph.define(round);
    expect(graph.graph.plan.cycles.get('a')).toEqual(['a', 'c', 'b', 'a']);
    expect(await graph.calculate()).toEqual({ free: 1 });
    expect(graph.graph.state('b')?.reason).toEqual({ kind: 'cycle', path: ['b', 'a', 'c', 'b'] });
    expect(graph.graph.state('reader')).toMatchObject({ phase: 'waiting', waitsFor: ['b'] });
    graph.define({ ...round, a: constant(4) });
    await graph.calculate();
    expect(graph.value('reader')).toBe(4);
  });

  test('a node that reads itself is a cycle of one', () => {
    const graph = new CountedGraph();
    graph.define({ a: { reads: ['a'], value: sum } });
    expect(graph.graph.plan.cycles.get('a')).toEqual(['a', 'a']);
  });

  test('a name that is not there fails its reader until it comes', async () => {
    const graph = new CountedGraph();
    graph.define({ a: { reads: ['later'], value: sum } });
    await graph.calculate();
    expect(graph.graph.state('a')).toMatchObject({ phase: 'failed', reason: { kind: 'missing', node: 'later' } });
    graph.define({ a: { reads: ['later'], value: sum }, later: constant(3) });
    await graph.calculate();
    expect(graph.value('a')).toBe(3);
  });

  test('levels: one more than the highest read', () => {
    const graph = new CountedGraph();
    graph.define({
      d: { reads: ['c', 'a'], value: sum },
      c: { reads: ['a', 'b'], value: sum },
      b: { reads: ['a'], value: sum },
      a: constant(1),
    });
    expect([...graph.graph.plan.levels]).toEqual([
      ['a', 0],
      ['b', 1],
      ['c', 2],
      ['d', 3],
    ]);
  });
});

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
