import type { Outcome } from '../../shared/outcome.ts';
import { fingerprint } from './fingerprint.ts';
import {
  atRest,
  type GraphNode,
  moved,
  type NodeState,
  newNode,
  obstacleOf,
  pendingOf,
  phaseOf,
  reasonOf,
  sameReads,
} from './graph-node.ts';
import type { NodeId, NodeRead, NodeSpec, Reason, Versions } from './node.ts';
import { type Plan, planOf } from './order.ts';
import { runNode } from './run-node.ts';
import { ResultStore, type StoreAccount, type StoredOutcome } from './store.ts';

export interface GraphOptions<Value> {
  /** Names a value by its content; by default the whole value has one version and no parts. */
  readonly versions?: (value: Value) => Versions;
  /** What a reader that named parts is given. */
  readonly restrict?: (value: Value, parts: readonly string[]) => Value;
  readonly limitBytes?: number;
  readonly limitResults?: number;
  /** Called whenever the state of a node may have changed. */
  readonly onChange?: (id: NodeId) => void;
}

const EMPTY: Plan = { order: [], levels: new Map(), readers: new Map(), cycles: new Map(), missing: new Map() };

/**
 * A graph of calculations that keeps itself up to date. Dependencies are declared, so that order, levels and cycles are
 * known before anything runs. Values are named by their content: a node whose value comes out equal stops the wave, and a
 * combination seen before is taken from the store instead of being calculated again.
 */
export class Graph<Value> {
  readonly #options: GraphOptions<Value>;
  readonly #store: ResultStore<Value>;
  readonly #nodes = new Map<NodeId, GraphNode<Value>>();
  #plan: Plan = EMPTY;
  #run: AbortController | undefined;
  #runs = 0;

  constructor(options: GraphOptions<Value> = {}) {
    this.#options = options;
    this.#store = new ResultStore(options.limitBytes ?? 512 * 2 ** 20, options.limitResults ?? 20_000);
  }

  get plan(): Plan {
    return this.#plan;
  }

  /** Replaces the graph. Nodes that keep id, key and reads keep their state; a running calculation is superseded. */
  define(specs: readonly NodeSpec<Value>[]): void {
    this.stop();
    const before = this.#plan;
    if (!this.#sameShape(specs)) this.#plan = planOf(specs);
    const wanted = new Set(specs.map(({ id }) => id));
    for (const id of this.#nodes.keys()) if (!wanted.has(id)) this.#nodes.delete(id);
    for (const spec of specs) {
      const node = this.#nodes.get(spec.id);
      if (!node) {
        this.#nodes.set(spec.id, newNode(spec));
        continue;
      }
      const changed =
        node.spec.key !== spec.key ||
        !sameReads(node.spec, spec) ||
        (before !== this.#plan && moved(before, this.#plan, spec));
      node.spec = spec;
      if (changed) node.marked = true;
    }
  }

  /** Ends the running calculation; what it had finished stays, what it was at is as if it had never begun. */
  stop(): void {
    this.#run?.abort(new DOMException('A newer change made this calculation useless.', 'AbortError'));
    this.#run = undefined;
  }

  /** Brings every marked node up to date. A later call, or define(), supersedes this one. */
  async calculate(): Promise<'finished' | 'superseded'> {
    this.stop();
    const run = new AbortController();
    this.#run = run;
    const number = ++this.#runs;
    this.#forgetReasons();
    for (const id of this.#plan.order) {
      const node = this.#nodes.get(id);
      if (!node?.marked) continue;
      const working = this.#settle(node, run.signal, number);
      if (working) await working;
      if (run.signal.aborted) return 'superseded';
    }
    this.#run = undefined;
    return 'finished';
  }

  /** Nodes whose state may be that of before a change: what is still to be worked out, and all that reads it. */
  pending(): ReadonlySet<NodeId> {
    return pendingOf(this.#plan.order, this.#nodes);
  }

  state(id: NodeId): NodeState<Value> | undefined {
    const node = this.#nodes.get(id);
    if (node) node.shown ??= { ...node.state };
    return node?.shown;
  }

  store(): StoreAccount {
    return this.#store.account();
  }

  /** Whether only keys and calculations differ, so that the plan stays as it is. */
  #sameShape(specs: readonly NodeSpec<Value>[]): boolean {
    if (specs.length !== this.#nodes.size) return false;
    let at = 0;
    for (const { spec } of this.#nodes.values()) {
      if (spec.id !== specs[at].id || !sameReads(spec, specs[at])) return false;
      at++;
    }
    return true;
  }

  #forgetReasons(): void {
    for (const node of this.#nodes.values())
      if (!node.marked && node.state.reason.kind !== 'untouched') this.#set(node, { reason: { kind: 'untouched' } });
  }

  /** Returns a promise only where something has to be calculated. */
  #settle(node: GraphNode<Value>, signal: AbortSignal, run: number): Promise<void> | undefined {
    const obstacle = obstacleOf(node.spec, this.#plan, this.#nodes);
    if (obstacle) {
      this.#block(node, obstacle, run);
      return undefined;
    }
    const readVersions = this.#readVersions(node.spec);
    const key = `${node.spec.key}\n${readVersions.join('\n')}`;
    if (key === node.key && node.state.phase !== 'waiting') {
      node.marked = false;
      node.settledIn = run;
      this.#set(node, { ...atRest(node), reason: this.#reasonEqual(node, run) });
      return undefined;
    }
    const reason = reasonOf(node, readVersions);
    const kept = this.#store.get(key);
    if (kept) {
      const again = key === node.key;
      this.#accept(node, key, readVersions, kept, run, again ? this.#reasonEqual(node, run) : { kind: 'kept' });
      return undefined;
    }
    const again: Reason = this.#store.hasLetGo(key) ? { kind: 'let-go' } : reason;
    return this.#work(node, key, readVersions, again, signal, run);
  }

  #work(
    node: GraphNode<Value>,
    key: string,
    readVersions: readonly string[],
    reason: Reason,
    signal: AbortSignal,
    run: number,
  ): Promise<void> | undefined {
    const take = (outcome: Outcome<Value>): void => {
      const stored = { node: node.spec.id, outcome, versions: this.#versionsOf(outcome) };
      this.#store.put(key, stored);
      this.#accept(node, key, readVersions, stored, run, reason);
    };
    const working = runNode(node.spec, this.#inputs(node.spec), signal, (progress) => {
      if (!signal.aborted) this.#begin(node, progress);
    });
    if (!(working instanceof Promise)) {
      take(working);
      return undefined;
    }
    this.#begin(node, node.state.phase === 'running' ? node.state.progress : 0);
    return working.then((outcome) => {
      if (outcome && !signal.aborted) take(outcome);
      // The successor may already be at this node; only a state that is still ours is put back.
      else if (node.state.phase === 'running' && (!this.#run || this.#run.signal === signal))
        this.#set(node, node.rest);
    });
  }

  #begin(node: GraphNode<Value>, progress: number): void {
    if (node.state.phase !== 'running') node.rest = { ...node.state };
    this.#set(node, { phase: 'running', progress });
  }

  #accept(
    node: GraphNode<Value>,
    key: string,
    readVersions: readonly string[],
    { outcome, versions }: StoredOutcome<Value>,
    run: number,
    reason: Reason,
  ): void {
    const same = node.versions?.whole === versions.whole && atRest(node).phase === phaseOf(outcome);
    node.key = key;
    node.ownKey = node.spec.key;
    node.readVersions = readVersions;
    node.versions = versions;
    node.marked = false;
    node.settledIn = run;
    const good = outcome.status === 'value';
    // An equal value keeps the old object, so that whoever holds it need not draw again.
    const fresh = good && versions.whole !== node.goodVersion;
    if (good) node.goodVersion = versions.whole;
    if (!same) this.#pass(node);
    this.#set(node, {
      phase: phaseOf(outcome),
      progress: 1,
      value: fresh ? outcome.value : node.state.value,
      stale: !good && node.state.value !== undefined,
      message: outcome.status === 'error' ? outcome.message : '',
      question: outcome.status === 'question' ? outcome.question : undefined,
      waitsFor: [],
      reason,
      version: node.state.version + (fresh ? 1 : 0),
    });
  }

  #block(node: GraphNode<Value>, reason: Reason, run: number): void {
    const waits = reason.kind === 'waits';
    const was = atRest(node);
    node.marked = false;
    node.settledIn = run;
    const next = {
      phase: waits ? 'waiting' : 'failed',
      progress: 0,
      stale: was.value !== undefined,
      message: '',
      question: undefined,
      waitsFor: waits ? reason.nodes : [],
      reason,
    } as const;
    const same = was.phase === next.phase && was.waitsFor.join('\n') === next.waitsFor.join('\n');
    if (!waits) node.key = '';
    if (!same) this.#pass(node);
    this.#set(node, next);
  }

  #pass(node: GraphNode<Value>): void {
    for (const reader of this.#plan.readers.get(node.spec.id) ?? []) {
      const next = this.#nodes.get(reader);
      if (next) next.marked = true;
    }
  }

  /** A value left over from before its node failed is not one to calculate with. */
  #isAbsent({ node, optional }: NodeRead): boolean {
    return optional === true && this.#nodes.get(node)?.state.phase !== 'done';
  }

  /** One text for each read, in their order. */
  #readVersions({ reads }: NodeSpec<Value>): string[] {
    return reads.map((read) => {
      if (this.#isAbsent(read)) return 'absent';
      const { node, parts } = read;
      const versions = this.#nodes.get(node)?.versions;
      return parts ? parts.map((part) => versions?.parts.get(part) ?? '-').join(' ') : (versions?.whole ?? '');
    });
  }

  #inputs({ reads }: NodeSpec<Value>): Map<NodeId, Value> {
    const inputs = new Map<NodeId, Value>();
    for (const read of reads) {
      if (this.#isAbsent(read)) continue;
      const { node, parts } = read;
      const value = this.#nodes.get(node)?.state.value as Value;
      inputs.set(node, parts && this.#options.restrict ? this.#options.restrict(value, parts) : value);
    }
    return inputs;
  }

  #versionsOf(outcome: StoredOutcome<Value>['outcome']): Versions {
    if (outcome.status !== 'value') return { whole: fingerprint(outcome), parts: new Map() };
    return this.#options.versions?.(outcome.value) ?? { whole: fingerprint(outcome.value), parts: new Map() };
  }

  /** Nothing was calculated; which of the nodes read were worked out and came out equal? */
  #reasonEqual(node: GraphNode<Value>, run: number): Reason {
    const nodes = node.spec.reads.map((read) => read.node).filter((id) => this.#nodes.get(id)?.settledIn === run);
    return nodes.length > 0 ? { kind: 'equal', nodes } : { kind: 'untouched' };
  }

  #set(node: GraphNode<Value>, change: Partial<NodeState<Value>>): void {
    Object.assign(node.state, change);
    node.shown = undefined;
    this.#options.onChange?.(node.spec.id);
  }
}
