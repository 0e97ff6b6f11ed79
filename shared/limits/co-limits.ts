import type { SAFETY_SOURCES } from '../sources/safety.ts';

/** The basis of a CO number; without it the number says nothing: 400 ppm at 3 % O2 is 467 ppm air-free. */
export type CoBasis = 'air_free' | 'at_3pct_o2' | 'as_measured';

export interface CoLimit {
  readonly name: string;
  readonly ppm: number;
  readonly basis: CoBasis;
  /** What the limit is for, in words. */
  readonly use: string;
  readonly source: keyof typeof SAFETY_SOURCES;
}

/** Limits in use, to choose from; which of them applies is for the local code and the rating plate to say. */
export const CO_LIMITS: readonly CoLimit[] = [
  { name: 'stop', ppm: 400, basis: 'air_free', use: 'vented heating equipment, shut down', source: 'ansiZ21' },
  { name: 'district', ppm: 400, basis: 'at_3pct_o2', use: 'emission limit of some districts', source: 'districtRule' },
  { name: 'unvented', ppm: 200, basis: 'air_free', use: 'unvented appliances', source: 'ansiZ21' },
  { name: 'service', ppm: 100, basis: 'air_free', use: 'what a tuned burner should stay under', source: 'fieldCo' },
];

/** The limit used where the user gives none. */
export const DEFAULT_CO_LIMIT: CoLimit = CO_LIMITS[0];
