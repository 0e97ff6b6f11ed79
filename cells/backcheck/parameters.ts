import { readFields } from '../../shared/foresight/read-fields.ts';
import type { Outcome } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface BackcheckParameters {
  readonly readings: string;
  readonly derive: string;
  readonly register: string;
  readonly events: string;
  readonly horizonDays: number;
  /** Chance from which a lane would have been raised. */
  readonly leastChance: number;
  /** Past years to look back over. */
  readonly years: number;
  readonly referenceAir: boolean;
}

export const BACKCHECK_DEFAULTS: BackcheckParameters = {
  readings: 'readings',
  derive: 'derive',
  register: 'register',
  events: '',
  horizonDays: 365,
  leastChance: 0.5,
  years: 6,
  referenceAir: true,
};

export function readParameters(raw: unknown): Outcome<BackcheckParameters> {
  return readFields('backcheck', BACKCHECK_DEFAULTS, raw, {
    horizonDays: { title: 'the horizon in days', from: 1, to: 3653 },
    leastChance: { title: 'the chance from which a lane is raised', from: 0.01, to: 0.99 },
    years: { title: 'the years to look back', from: 1, to: 30 },
  });
}
