import type { Unit } from '../quantities/unit.ts';
import type { Step } from './step.ts';

/** Formulas ready to be evaluated: steps in order, and which of them are wanted. */
export interface Program {
  readonly steps: readonly Step[];
  readonly outputs: ReadonlyMap<string, { readonly step: number; readonly unit: Unit }>;
}
