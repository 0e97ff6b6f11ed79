import { readFields } from '../../shared/foresight/read-fields.ts';
import type { Outcome } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface SupplyParameters {
  readonly readings: string;
  readonly derive: string;
  readonly register: string;
  readonly events: string;
  /** Counted from the day the notebook looks from. */
  readonly horizonDays: number;
  /** Growth matters when the limit is reached within these years. */
  readonly lookAheadYears: number;
  /** Share of false discoveries among the drops called growing. */
  readonly falseDiscoveryRate: number;
  /** The drop grows with heat input to this power. */
  readonly inputExponent: number;
}

export const SUPPLY_DEFAULTS: SupplyParameters = {
  readings: 'readings',
  derive: 'derive',
  register: 'register',
  events: '',
  horizonDays: 365,
  lookAheadYears: 3,
  falseDiscoveryRate: 0.05,
  inputExponent: 1.85,
};

export function readParameters(raw: unknown): Outcome<SupplyParameters> {
  return readFields('supply', SUPPLY_DEFAULTS, raw, {
    horizonDays: { title: 'the horizon in days', from: 1, to: 3653 },
    lookAheadYears: { title: 'the look-ahead in years', from: 0.1, to: 20 },
    falseDiscoveryRate: { title: 'the share of false discoveries', from: 0.001, to: 0.5 },
    inputExponent: { title: 'the power of heat input', from: 0, to: 3 },
  });
}
