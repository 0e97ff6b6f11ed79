import type { Outcome } from '../../shared/outcome.ts';
import type { NodeId, NodeSpec } from './node.ts';
import { yieldTurn } from './yield-turn.ts';

/** How long a node may calculate before others are let in, ms: well under the 50 ms in which typing feels immediate. */
const SLICE_MS = 12;

/**
 * Runs one node. What it throws becomes an error outcome, so that a fault stays with its node; undefined means that the
 * run was superseded and the node has left no trace.
 */
export async function runNode<Value>(
  spec: NodeSpec<Value>,
  inputs: ReadonlyMap<NodeId, Value>,
  signal: AbortSignal,
  progress: (share: number) => void,
): Promise<Outcome<Value> | undefined> {
  let sliceBegan = performance.now();
  const pause = async (): Promise<void> => {
    signal.throwIfAborted();
    if (performance.now() - sliceBegan < SLICE_MS) return;
    await yieldTurn();
    sliceBegan = performance.now();
    signal.throwIfAborted();
  };
  try {
    return await spec.compute(inputs, { signal, progress, pause });
  } catch (cause) {
    if (signal.aborted) return undefined;
    return { status: 'error', message: cause instanceof Error ? cause.message : String(cause) };
  }
}
