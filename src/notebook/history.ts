/** Past and future states of an immutable value; a step costs only what it changed. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
}

/** Far above the 200 steps promised; documents share what they do not change. */
const STEPS_KEPT = 1000;

export const beginHistory = <T>(present: T): History<T> => ({ past: [], present, future: [] });

export function advance<T>({ past, present }: History<T>, next: T): History<T> {
  return { past: [...past, present].slice(-STEPS_KEPT), present: next, future: [] };
}

export function stepBack<T>({ past, present, future }: History<T>): History<T> | undefined {
  const previous = past.at(-1);
  return previous === undefined
    ? undefined
    : { past: past.slice(0, -1), present: previous, future: [present, ...future] };
}

export function stepForward<T>({ past, present, future }: History<T>): History<T> | undefined {
  const [next, ...rest] = future;
  return next === undefined ? undefined : { past: [...past, present], present: next, future: rest };
}
