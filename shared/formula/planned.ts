import type { Slopes } from './instruction.ts';

/** What a step came to in the plan. */
export interface Planned {
  readonly buffer: number;
  readonly slopes: Slopes;
  /** Inputs that reach it at all, and whether it is monotone in each; by the input's name. */
  readonly reach: ReadonlyMap<string, boolean>;
}
