import { type CoBasis, DEFAULT_CO_LIMIT } from '../../shared/limits/co-limits.ts';
import { badCell, badChoice, badNumber } from '../../shared/messages/raise.ts';
import { fail, type Outcome, succeed } from '../../shared/outcome.ts';

/** Names of cells are those of the notebook; '' where the notebook has no such cell. */
export interface RaiseParameters {
  readonly readings: string;
  readonly register: string;
  readonly events: string;
  readonly derive: string;
  readonly drift: string;
  readonly supply: string;
  readonly instruments: string;
  /** Least chance of being or getting outside its band for a fire to be raised, 0..1. */
  readonly leastChance: number;
  /** Largest expected share of false entries in each list, 0..1. */
  readonly falseDiscoveryRate: number;
  /** Largest false discovery rate of the tests for flue temperature, scatter and returns, 0..1. */
  readonly signFalseDiscoveryRate: number;
  readonly coLimitPpm: number;
  readonly coBasis: CoBasis;
  /** Months without a reading after which a unit counts as unseen, where the register names no longer interval. */
  readonly unseenMonths: number;
  /** Combustion air of the hottest days, for the look at the summer. */
  readonly summerAirC: number;
  /** O2 under which a burner counts as rich on such a day. */
  readonly richO2Pct: number;
}

export const RAISE_DEFAULTS: RaiseParameters = {
  readings: 'readings',
  register: 'register',
  events: '',
  derive: 'derive',
  drift: 'drift',
  supply: 'supply',
  instruments: 'instruments',
  leastChance: 0.5,
  // The list is cut by its least chance and says how many of its visits will be for nothing; whoever wants fewer cuts here.
  falseDiscoveryRate: 0.5,
  signFalseDiscoveryRate: 0.05,
  coLimitPpm: DEFAULT_CO_LIMIT.ppm,
  coBasis: DEFAULT_CO_LIMIT.basis,
  unseenMonths: 18,
  summerAirC: 35,
  richO2Pct: 1.5,
};

const CO_BASES: readonly string[] = ['air_free', 'at_3pct_o2', 'as_measured'];
const RANGES: readonly (readonly [
  (
    | 'leastChance'
    | 'falseDiscoveryRate'
    | 'signFalseDiscoveryRate'
    | 'coLimitPpm'
    | 'unseenMonths'
    | 'summerAirC'
    | 'richO2Pct'
  ),
  string,
  number,
  number,
])[] = [
  ['leastChance', 'the least chance', 0, 1],
  ['falseDiscoveryRate', 'the share of false discoveries', 0, 1],
  ['signFalseDiscoveryRate', 'the false discovery rate of signs', 0, 1],
  ['coLimitPpm', 'the CO limit in ppm', 1, 10_000],
  ['unseenMonths', 'the months without a reading', 1, 240],
  ['summerAirC', 'the air of the hottest days in °C', 0, 60],
  ['richO2Pct', 'the O2 of a rich burner in %', 0, 10],
];

const CELLS = ['readings', 'register', 'events', 'derive', 'drift', 'supply', 'instruments'] as const;

export function readParameters(raw: unknown): Outcome<RaiseParameters> {
  const given = (typeof raw === 'object' && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
  const parameters = Object.fromEntries(
    Object.entries(RAISE_DEFAULTS).map(([key, value]) => [key, given[key] ?? value]),
  ) as unknown as RaiseParameters;
  for (const key of CELLS)
    if (typeof parameters[key] !== 'string') return fail(badCell(key, JSON.stringify(parameters[key]) ?? 'nothing'));
  for (const [key, what, least, most] of RANGES) {
    const value = parameters[key];
    if (!(typeof value === 'number' && value >= least && value <= most))
      return fail(badNumber(what, JSON.stringify(value) ?? 'nothing', least, most));
  }
  if (!CO_BASES.includes(parameters.coBasis))
    return fail(badChoice('the basis of CO', JSON.stringify(parameters.coBasis) ?? 'nothing', CO_BASES.join(', ')));
  return succeed(parameters);
}
