import { describe, expect, test } from 'vitest';
import { ask } from '../../../shared/outcome.ts';
import { CountedGraph, constant, failing, type Plan, sum } from './counted-graph.ts';

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
