import type { Slopes } from './instruction.ts';

/** How a step moves with an input: up or down in every row, in one direction that each row tells, or not known to keep one. */
export type Way = 'up' | 'down' | 'one' | 'none';

/** The inputs that reach a step at all, by name. */
export type Reach = ReadonlyMap<string, Way>;

/** What a step came to in the plan. */
export interface Planned {
  readonly buffer: number;
  readonly slopes: Slopes;
  /** Inputs that reach it at all, and how it moves with each. */
  readonly reach: Reach;
  /** True where no input that keeps to its own range makes it negative. */
  readonly isNeverNegative: boolean;
}
