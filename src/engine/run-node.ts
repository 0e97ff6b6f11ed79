import { fail, type Outcome } from '../../shared/outcome.ts';
import type { NodeId, NodeSpec } from './node.ts';
import { yieldTurn } from './yield-turn.ts';

/** How long a node may calculate before others are let in, ms: well under the 50 ms in which typing feels immediate. */
const SLICE_MS = 12;

/**
 * Runs one node. What it throws becomes an error outcome, so that a fault stays with its node; undefined means that the
 * run was superseded and the node has left no trace. A node that answers at once is not made to wait for a turn.
 */
export function runNode<Value>(
  spec: NodeSpec<Value>,
  inputs: ReadonlyMap<NodeId, Value>,
  signal: AbortSignal,
  progress: (share: number) => void,
): Outcome<Value> | Promise<Outcome<Value> | undefined> {
  try {
    const outcome = spec.compute(inputs, { signal, progress, pause: pausing(signal) });
    if (!(outcome instanceof Promise)) return outcome;
    return outcome.catch((cause: unknown) => (signal.aborted ? undefined : failure(cause)));
  } catch (cause) {
    return failure(cause);
  }
}

function pausing(signal: AbortSignal): () => Promise<void> {
  let sliceBegan = performance.now();
  return async () => {
    signal.throwIfAborted();
    if (performance.now() - sliceBegan < SLICE_MS) return;
    await yieldTurn();
    sliceBegan = performance.now();
    signal.throwIfAborted();
  };
}

const failure = (cause: unknown): Outcome<never> => fail(cause instanceof Error ? cause.message : String(cause));
