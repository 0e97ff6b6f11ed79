import type { Question } from '../../shared/outcome.ts';
import type { NodeId, NodePhase, NodeSpec, Reason, Versions } from './node.ts';
import type { Plan } from './order.ts';

export interface NodeState<Value> {
  readonly phase: NodePhase;
  readonly progress: number;
  /** The last good value; stale where the phase is failed, asking or waiting. */
  readonly value: Value | undefined;
  readonly stale: boolean;
  readonly message: string;
  readonly question: Question | undefined;
  /** The nodes whose failure or question this one waits for, not those in between. */
  readonly waitsFor: readonly NodeId[];
  readonly reason: Reason;
  /** Raised by one with every new value. */
  readonly version: number;
}

type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

/** A node as the graph keeps it. */
export interface GraphNode<Value> {
  spec: NodeSpec<Value>;
  /** Changed in place, since ten thousand nodes may change at once; `shown` is what was handed out of it. */
  state: Mutable<NodeState<Value>>;
  shown: NodeState<Value> | undefined;
  marked: boolean;
  /** Key of the outcome held, '' for none. */
  key: string;
  ownKey: string;
  readVersions: readonly string[];
  versions: Versions | undefined;
  /** Version of the last good value. */
  goodVersion: string;
  /** The state to go back to when the calculation is superseded. */
  rest: NodeState<Value>;
  /** The run in which it was last worked out. */
  settledIn: number;
}

const IDLE = {
  phase: 'idle',
  progress: 0,
  value: undefined,
  stale: false,
  message: '',
  question: undefined,
  waitsFor: [],
  reason: { kind: 'never' },
  version: 0,
} as const;

export function newNode<Value>(spec: NodeSpec<Value>): GraphNode<Value> {
  return {
    spec,
    state: { ...IDLE },
    shown: undefined,
    marked: true,
    key: '',
    ownKey: '',
    readVersions: [],
    versions: undefined,
    goodVersion: '',
    rest: IDLE,
    settledIn: 0,
  };
}

/** The state without what a superseded calculation may have left in it. */
export function atRest<Value>(node: GraphNode<Value>): NodeState<Value> {
  return node.state.phase === 'running' ? node.rest : node.state;
}

export function phaseOf({ status }: { readonly status: 'value' | 'error' | 'question' }): NodePhase {
  return status === 'value' ? 'done' : status === 'error' ? 'failed' : 'asking';
}

export function sameReads(a: NodeSpec<unknown>, b: NodeSpec<unknown>): boolean {
  if (a.reads.length !== b.reads.length) return false;
  return a.reads.every(({ node, parts, optional }, at) => {
    const other = b.reads[at];
    return (
      node === other.node &&
      optional === other.optional &&
      (parts === other.parts || parts?.join('\n') === other.parts?.join('\n'))
    );
  });
}

/** Whether what stands in the node's way (a cycle, a missing node) has changed. */
export function moved(before: Plan, after: Plan, { id, reads }: NodeSpec<unknown>): boolean {
  if (before.cycles.get(id)?.join('\n') !== after.cycles.get(id)?.join('\n')) return true;
  if (before.missing.get(id) !== after.missing.get(id)) return true;
  return reads.some(({ node }) => before.levels.has(node) !== after.levels.has(node));
}

export function reasonOf(node: GraphNode<unknown>, readVersions: readonly string[]): Reason {
  if (node.key === '' && node.readVersions.length === 0 && node.ownKey === '') return { kind: 'first' };
  if (node.ownKey !== node.spec.key) return { kind: 'own' };
  const changed = node.spec.reads.filter((_, at) => node.readVersions[at] !== readVersions[at]);
  return changed.length > 0
    ? { kind: 'reads', nodes: [...new Set(changed.map((read) => read.node))] }
    : { kind: 'own' };
}

/** The marked nodes and all that read them, in an order in which nodes come after what they read. */
export function pendingOf(order: readonly NodeId[], nodes: ReadonlyMap<NodeId, GraphNode<unknown>>): Set<NodeId> {
  const found = new Set<NodeId>();
  for (const id of order) {
    const node = nodes.get(id);
    if (node?.marked || node?.spec.reads.some((read) => found.has(read.node))) found.add(id);
  }
  return found;
}

/** What stands in a node's way: a cycle, a node that is not there, or nodes read that have no result. */
export function obstacleOf(
  { id, reads }: NodeSpec<unknown>,
  { cycles, missing }: Plan,
  nodes: ReadonlyMap<NodeId, GraphNode<unknown>>,
): Reason | undefined {
  const cycle = cycles.get(id);
  if (cycle) return { kind: 'cycle', path: cycle };
  const gone = missing.get(id);
  if (gone !== undefined) return { kind: 'missing', node: gone };
  let roots: Set<NodeId> | undefined;
  for (const { node, optional } of reads) {
    const state = nodes.get(node)?.state;
    if (state?.phase === 'done' || optional) continue;
    roots ??= new Set();
    if (state?.phase === 'waiting') for (const root of state.waitsFor) roots.add(root);
    else roots.add(node);
  }
  return roots && { kind: 'waits', nodes: [...roots] };
}
