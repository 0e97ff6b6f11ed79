import { fail, type Outcome, succeed } from '../../../shared/outcome.ts';
import { Graph, type GraphOptions } from '../../../src/engine/graph.ts';
import type { NodeRun, NodeSpec } from '../../../src/engine/node.ts';

/** What a test says of a node: whom it reads and how it calculates from their values, in that order. */
export interface Plan {
  readonly reads?: readonly string[];
  /** Those of `reads` that it can do without; their value is then NaN. */
  readonly optional?: readonly string[];
  readonly key?: string;
  readonly value: (...inputs: number[]) => number | Outcome<number> | Promise<Outcome<number>>;
  readonly work?: (run: NodeRun) => Promise<void>;
}

/** A graph of numbers that counts how often each node was calculated. */
export class CountedGraph {
  readonly graph: Graph<number>;
  readonly counts = new Map<string, number>();

  constructor(options: GraphOptions<number> = {}) {
    this.graph = new Graph(options);
  }

  define(plans: Readonly<Record<string, Plan>>): void {
    this.graph.define(Object.entries(plans).map(([id, plan]) => this.#spec(id, plan)));
  }

  /** Calculates and returns how often each node was calculated in doing so. */
  async calculate(): Promise<Record<string, number>> {
    this.counts.clear();
    await this.graph.calculate();
    return Object.fromEntries(this.counts);
  }

  value(id: string): number | undefined {
    return this.graph.state(id)?.value;
  }

  #spec(id: string, { reads = [], optional = [], key, value, work }: Plan): NodeSpec<number> {
    return {
      id,
      key: key ?? value.toString(),
      reads: reads.map((node) => (optional.includes(node) ? { node, optional: true } : { node })),
      compute: async (inputs, run) => {
        this.counts.set(id, (this.counts.get(id) ?? 0) + 1);
        await work?.(run);
        const made = await value(...reads.map((node) => inputs.get(node) ?? Number.NaN));
        return typeof made === 'number' ? succeed(made) : made;
      },
    };
  }
}

export const failing = (message: string): (() => Outcome<number>) =>
  Object.assign(() => fail(message), { toString: () => `fail ${message}` });

/** A constant whose key is the constant. */
export const constant = (value: number): Plan => ({ key: `constant ${value}`, value: () => value });

export const sum: Plan['value'] = (...inputs) => inputs.reduce((total, input) => total + input, 0);
