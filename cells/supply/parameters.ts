import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

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
  const parameters: SupplyParameters = { ...SUPPLY_DEFAULTS, ...((raw ?? {}) as Partial<SupplyParameters>) };
  const { horizonDays, lookAheadYears, falseDiscoveryRate, inputExponent } = parameters;
  if (!(horizonDays >= 1 && horizonDays <= 3653))
    return fail(`supply: the horizon must be 1 to 3653 days, it is ${horizonDays}; give a number of days.`);
  if (!(lookAheadYears > 0 && lookAheadYears <= 20))
    return fail(`supply: the look-ahead must be up to 20 years, it is ${lookAheadYears}; give a number of years.`);
  if (!(falseDiscoveryRate > 0 && falseDiscoveryRate < 1))
    return fail(`supply: the false-discovery rate must lie between 0 and 1, it is ${falseDiscoveryRate}; try 0.05.`);
  if (!(inputExponent >= 0 && inputExponent <= 3))
    return fail(`supply: the exponent of heat input must be 0 to 3, it is ${inputExponent}; 1.85 is usual.`);
  return succeed(parameters);
}
