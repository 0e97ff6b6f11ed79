import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CountedGraph, failing, type Plan } from './counted-graph.ts';

/** A node of a random graph: it reads some of those before it; its rule turns their sum into a small number. */
interface RandomNode {
  readonly reads: readonly number[];
  readonly rule: number;
}

const MODULI = [2, 3, 5, 7, 1000];
/** Rule 9 fails; small moduli make equal results likely, so that pruning is met all the time. */
function calculate({ rule }: RandomNode, inputs: readonly number[]): number {
  const total = inputs.reduce((sum, input) => sum + input, rule);
  return (total * 31 + rule) % MODULI[rule % MODULI.length];
}

function plansOf(nodes: readonly RandomNode[]): Record<string, Plan> {
  return Object.fromEntries(
    nodes.map((node, id): [string, Plan] => [
      `n${id}`,
      node.rule === 9
        ? { reads: node.reads.map((read) => `n${read}`), key: 'fails', value: failing(`n${id} fails`) }
        : {
            reads: node.reads.map((read) => `n${read}`),
            key: `rule ${node.rule}`,
            value: (...inputs) => calculate(node, inputs),
          },
    ]),
  );
}

/** The plain way: every node anew, in order; undefined where the node or something above it fails. */
function fromScratch(nodes: readonly RandomNode[]): (number | undefined)[] {
  const values: (number | undefined)[] = [];
  for (const node of nodes) {
    const inputs = node.reads.map((read) => values[read]);
    values.push(node.rule === 9 || inputs.includes(undefined) ? undefined : calculate(node, inputs as number[]));
  }
  return values;
}

function fresh({ graph }: CountedGraph, count: number): (number | undefined)[] {
  return Array.from({ length: count }, (_, id) => {
    const state = graph.state(`n${id}`);
    return state?.phase === 'done' ? state.value : undefined;
  });
}

/** A graph of `size` nodes, each reading up to four of the 30 before it. */
const graphOf = (size: number): fc.Arbitrary<RandomNode[]> =>
  fc
    .array(
      fc.record({
        back: fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 4 }),
        rule: fc.integer({ min: 0, max: 60 }),
      }),
      { minLength: size, maxLength: size },
    )
    .map((raw) =>
      raw.map(({ back, rule }, id) => ({
        rule,
        reads: [...new Set(back.map((step) => id - step))].filter((read) => read >= 0),
      })),
    );

const change = (size: number): fc.Arbitrary<{ at: number; rule: number }[]> =>
  fc.array(fc.record({ at: fc.integer({ min: 0, max: size - 1 }), rule: fc.integer({ min: 0, max: 60 }) }), {
    minLength: 1,
    maxLength: 5,
  });

describe('random graphs of 1,000 nodes', () => {
  test('after every change the values are those of a full recalculation', async () => {
    await fc.assert(
      fc.asyncProperty(
        graphOf(1000),
        fc.array(change(1000), { minLength: 3, maxLength: 6 }),
        async (start, changes) => {
          const graph = new CountedGraph();
          let nodes: readonly RandomNode[] = start;
          graph.define(plansOf(nodes));
          await graph.calculate();
          expect(fresh(graph, nodes.length)).toEqual(fromScratch(nodes));
          for (const edits of changes) {
            nodes = edits.reduce((now, { at, rule }) => now.with(at, { ...now[at], rule }), nodes);
            graph.define(plansOf(nodes));
            const counts = await graph.calculate();
            expect(fresh(graph, nodes.length)).toEqual(fromScratch(nodes));
            expect(Math.max(0, ...Object.values(counts))).toBeLessThanOrEqual(1);
          }
          graph.define(plansOf(start));
          expect(await graph.calculate()).toEqual({});
          expect(fresh(graph, start.length)).toEqual(fromScratch(start));
        },
      ),
      { numRuns: 12, seed: 20_261_125 },
    );
  });

  test('interrupted at random, it still ends where a full recalculation ends', async () => {
    await fc.assert(
      fc.asyncProperty(graphOf(120), fc.array(change(120), { minLength: 4, maxLength: 10 }), async (start, changes) => {
        const graph = new CountedGraph();
        let nodes: readonly RandomNode[] = start;
        graph.define(plansOf(nodes));
        const running: Promise<unknown>[] = [graph.graph.calculate()];
        for (const [step, edits] of changes.entries()) {
          for (let turn = 0; turn < (step * 7) % 40; turn++) await Promise.resolve();
          nodes = edits.reduce((now, { at, rule }) => now.with(at, { ...now[at], rule }), nodes);
          graph.define(plansOf(nodes));
          running.push(graph.graph.calculate());
        }
        await Promise.all(running);
        expect(fresh(graph, nodes.length)).toEqual(fromScratch(nodes));
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
