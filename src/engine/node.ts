import type { Outcome } from '../../shared/outcome.ts';

export type NodeId = string;

/** One node read by another. Where `parts` is given, a change of its other parts does not reach the reader. */
export interface NodeRead {
  readonly node: NodeId;
  readonly parts?: readonly string[];
  /** The reader does not wait for it: while it has no value of its own time, it is absent from the inputs. */
  readonly optional?: true;
}

/** A calculation in the graph. It is pure: the same key and the same inputs give the same outcome. */
export interface NodeSpec<Value> {
  readonly id: NodeId;
  /** Stands for everything the outcome depends on besides the nodes read: parameters, file hashes, dates. */
  readonly key: string;
  readonly reads: readonly NodeRead[];
  compute(inputs: ReadonlyMap<NodeId, Value>, run: NodeRun): Promise<Outcome<Value>> | Outcome<Value>;
}

/** What a running node is given besides its inputs. */
export interface NodeRun {
  readonly signal: AbortSignal;
  progress(share: number): void;
  /** Lets others run; throws the signal's reason when the calculation has been superseded. */
  pause(): Promise<void>;
}

/** Names a value by its content: equal content, equal version. */
export interface Versions {
  readonly whole: string;
  readonly parts: ReadonlyMap<string, string>;
}

export type NodePhase = 'idle' | 'running' | 'done' | 'failed' | 'asking' | 'waiting';

/** Why a node was, or was not, calculated in the last run. */
export type Reason =
  | { readonly kind: 'never' }
  | { readonly kind: 'first' }
  | { readonly kind: 'own' }
  | { readonly kind: 'reads'; readonly nodes: readonly NodeId[] }
  | { readonly kind: 'kept' }
  /** It had been calculated before, and the store has let that result go since. */
  | { readonly kind: 'let-go' }
  | { readonly kind: 'untouched' }
  | { readonly kind: 'equal'; readonly nodes: readonly NodeId[] }
  | { readonly kind: 'waits'; readonly nodes: readonly NodeId[] }
  | { readonly kind: 'missing'; readonly node: NodeId }
  | { readonly kind: 'cycle'; readonly path: readonly NodeId[] };
