import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

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
  const parameters: InstrumentsParameters = {
    ...INSTRUMENTS_DEFAULTS,
    ...((raw ?? {}) as Partial<InstrumentsParameters>),
  };
  if (!(parameters.tolerancePct >= 0 && parameters.tolerancePct <= 5))
    return fail(
      `instruments: the tolerance must be 0 to 5 points, it is ${parameters.tolerancePct}; 0.15 is the default.`,
    );
  return succeed(parameters);
}
