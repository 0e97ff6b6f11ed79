import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface DriftParameters {
  readonly readings: string;
  readonly derive: string;
  readonly register: string;
  readonly events: string;
  /** Counted from the day the notebook looks from. */
  readonly horizonDays: number;
  /** Whether levels are judged at reference air (20 °C, 101.325 kPa) or as measured. */
  readonly referenceAir: boolean;
  /** Which quantity a lane is judged in: the one its target is written in, or always this one. */
  readonly quantity: 'as_target' | 'o2_pct' | 'co2_pct';
}

export const DRIFT_DEFAULTS: DriftParameters = {
  readings: 'readings',
  derive: 'derive',
  register: 'register',
  events: '',
  horizonDays: 365,
  referenceAir: true,
  quantity: 'as_target',
};

export function readParameters(raw: unknown): Outcome<DriftParameters> {
  const parameters: DriftParameters = { ...DRIFT_DEFAULTS, ...((raw ?? {}) as Partial<DriftParameters>) };
  const { horizonDays, quantity } = parameters;
  if (!Number.isFinite(horizonDays) || horizonDays < 1 || horizonDays > 3653)
    return fail(`drift: the horizon must be 1 to 3653 days, it is ${horizonDays}; give a number of days.`);
  if (!['as_target', 'o2_pct', 'co2_pct'].includes(quantity))
    return fail(`drift: the quantity must be as_target, o2_pct or co2_pct, it is ${quantity}; choose one of these.`);
  return succeed(parameters);
}
