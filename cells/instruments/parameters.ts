import { readFields } from '../../shared/foresight/read-fields.ts';
import type { Outcome } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook. */
export interface InstrumentsParameters {
  readonly readings: string;
  readonly drift: string;
  /** A bias larger than this, in points of O2 or CO2, and real, is called biased. */
  readonly tolerancePct: number;
}

export const INSTRUMENTS_DEFAULTS: InstrumentsParameters = {
  readings: 'readings',
  drift: 'drift',
  tolerancePct: 0.15,
};

export function readParameters(raw: unknown): Outcome<InstrumentsParameters> {
  return readFields('instruments', INSTRUMENTS_DEFAULTS, raw, {
    tolerancePct: { title: 'the tolerance in points', from: 0, to: 5 },
  });
}
