import type { Program } from './program.ts';

/** Numbers of the steps that the outputs rest on. */
export function liveSteps({ steps, outputs }: Program): Set<number> {
  const live = new Set<number>();
  const stack = [...outputs.values()].map(({ step }) => step);
  for (let step = stack.pop(); step !== undefined; step = stack.pop()) {
    if (live.has(step)) continue;
    live.add(step);
    stack.push(...steps[step].args);
  }
  return live;
}
