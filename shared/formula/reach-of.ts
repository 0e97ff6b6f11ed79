import type { Planned } from './planned.ts';

/** The inputs that reach a step: monotone in one only where a single argument carries it and the operation is so in it. */
export function reachOf(args: readonly Planned[], monotone: readonly boolean[]): ReadonlyMap<string, boolean> {
  const reach = new Map<string, boolean>();
  args.forEach((arg, position) => {
    for (const [name, isMonotone] of arg.reach) reach.set(name, !reach.has(name) && isMonotone && monotone[position]);
  });
  return reach;
}
