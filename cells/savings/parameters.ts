import { badCell, badChoice } from '../../shared/messages/savings.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface SavingsParameters {
  readonly readings: string;
  readonly derive: string;
  readonly register: string;
  readonly drift: string;
  readonly fuelUse: string;
  /** What would have been without the visit: no tune-up at all in the first year, or the next planned visit. */
  readonly counterfactual: 'no_tune_up' | 'next_planned_visit';
  /** Whether found and left are compared at reference air or as measured. */
  readonly air: 'reference' | 'measured';
}

export const SAVINGS_DEFAULTS: SavingsParameters = {
  readings: 'readings',
  derive: 'derive',
  register: 'register',
  drift: 'drift',
  fuelUse: '',
  counterfactual: 'no_tune_up',
  air: 'reference',
};

const CELLS = ['readings', 'derive', 'register', 'drift', 'fuelUse'] as const;
export const COUNTERFACTUALS: readonly string[] = ['no_tune_up', 'next_planned_visit'];
export const AIRS: readonly string[] = ['reference', 'measured'];

export function readParameters(raw: unknown): Outcome<SavingsParameters> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const parameters = Object.fromEntries(
    Object.entries(SAVINGS_DEFAULTS).map(([key, value]) => [key, given[key] ?? value]),
  ) as unknown as SavingsParameters;
  const shown = (value: unknown): string => JSON.stringify(value) ?? 'nothing';
  for (const key of CELLS) if (typeof parameters[key] !== 'string') return fail(badCell(key, shown(parameters[key])));
  const { counterfactual, air } = parameters;
  if (!COUNTERFACTUALS.includes(counterfactual))
    return fail(badChoice('the comparison', shown(counterfactual), COUNTERFACTUALS.join(', ')));
  if (!AIRS.includes(air)) return fail(badChoice('the air', shown(air), AIRS.join(', ')));
  return succeed(parameters);
}
