import type { BudgetTerm } from '../formula/budget.ts';

/** What an uncertain input shares with other readings: the instrument, the fuel, the burner; '' for nothing. */
export type SharedBy = 'analyzer' | 'fuel' | 'burner' | '';

/** Share of an instrument's variance that stays from one reading to the next: calibration, not noise (project default). */
const CALIBRATION_SHARE = 0.6;

const SHARED: Readonly<Record<string, SharedBy>> = {
  'reading.o2_pct': 'analyzer',
  'reading.co2_pct': 'analyzer',
  'reading.o2_wet_pct': 'burner',
  'reading.co_ppm': 'analyzer',
  'reading.co_air_free_ppm': 'analyzer',
  'reading.nox_ppm': 'analyzer',
  'reading.flue_C': 'analyzer',
  'burner.air_C': 'analyzer',
  'fuel.co2_max': 'fuel',
  'burner.temperature_exponent': 'burner',
  'burner.season': '',
};

/** What an input's uncertainty is shared by. */
export const sharedBy = (input: string): SharedBy => (Object.hasOwn(SHARED, input) ? SHARED[input] : '');

/** One derived number in a sum or difference. */
export interface CombinedTerm {
  readonly weight: number;
  readonly budget: readonly BudgetTerm[];
  readonly analyzer: string;
  readonly fuel: string;
  /** The unit whose burner it is. */
  readonly unit: string;
}

/**
 * Standard uncertainty of the sum of weight x number: +1 and -1 for a difference, 1/n for a mean. What an analyzer, a
 * fuel or a burner brings into several of the numbers is one error, added with its sign; it cancels in a difference of
 * two readings by one instrument and does not shrink in a mean over a fleet. An unnamed analyzer is shared with nobody.
 */
export function combinedSd(terms: readonly CombinedTerm[], calibrationShare = CALIBRATION_SHARE): number {
  let own = 0;
  const common = new Map<string, { sum: number; share: number }>();
  terms.forEach(({ weight, budget, ...keys }, index) => {
    for (const { input, contribution } of budget) {
      const by = sharedBy(input);
      const part = weight * contribution;
      const share = by === '' ? 0 : by === 'analyzer' ? calibrationShare : 1;
      own += (1 - share) * part * part;
      const named = by === '' ? '' : by === 'burner' ? keys.unit : keys[by];
      const key = `${input}\u0000${named === '' ? index : named}`;
      const found = common.get(key) ?? { sum: 0, share };
      common.set(key, { sum: found.sum + part, share });
    }
  });
  return Math.sqrt([...common.values()].reduce((total, { sum, share }) => total + share * sum * sum, own));
}
