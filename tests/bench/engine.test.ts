import { describe, expect, test } from 'vitest';
import { succeed } from '../../shared/outcome.ts';
import { Graph } from '../../src/engine/graph.ts';
import type { NodeSpec } from '../../src/engine/node.ts';
import { stopwatch } from './stopwatch.ts';

const COUNT = 10_000;
const RUNS = 21;
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

/** 10,000 nodes, each reading two of the hundred before it; the first one decides them all. */
function graphOf(first: number): NodeSpec<number>[] {
  return Array.from({ length: COUNT }, (_, id): NodeSpec<number> => {
    const reads = id === 0 ? [] : [...new Set([Math.max(0, id - 1 - (id % 7)), Math.max(0, id - 1 - (id % 97))])];
    return {
      id: `n${id}`,
      key: id === 0 ? `first ${first}` : 'sum',
      reads: reads.map((read) => ({ node: `n${read}` })),
      compute: (inputs) => succeed([...inputs.values()].reduce((sum, value) => (sum + value) % 1_000_003, id + first)),
    };
  });
}

describe(`a graph of ${COUNT} trivial cells`, () => {
  test('recalculates whole in under 100 ms (issue: under 100 ms)', async () => {
    const graph = new Graph<number>({ limitResults: 50_000 });
    const times: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const lap = stopwatch();
      graph.define(graphOf(run));
      await graph.calculate();
      times.push(lap().ms);
    }
    console.log(`10,000 cells, all new: median ${median(times).toFixed(0)} ms, first ${times[0].toFixed(0)} ms`);
    expect(graph.state(`n${COUNT - 1}`)?.phase).toBe('done');
    expect(median(times)).toBeLessThan(100);
  });

  test('undo, from the store', async () => {
    const graph = new Graph<number>({ limitResults: 50_000 });
    const times: number[] = [];
    for (let run = 0; run < 2 * RUNS; run++) {
      const lap = stopwatch();
      graph.define(graphOf(run % 2));
      await graph.calculate();
      times.push(lap().ms);
    }
    console.log(`10,000 cells, all kept: median ${median(times).toFixed(0)} ms`);
    expect(median(times)).toBeLessThan(100);
  });
});
