import { describe, expect, test } from 'vitest';
import { Graph } from '../../../src/engine/graph.ts';
import { CountedGraph, constant, type Plan, sum } from './counted-graph.ts';

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
