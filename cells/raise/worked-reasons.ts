import type { Reason } from './finding.ts';

const WORKED: readonly Reason[] = [
  'co_over_range',
  'co_high',
  'supply_over_maximum',
  'supply_under_minimum',
  'supply_drop_over',
  'supply_drop_growing',
  'out_of_tolerance',
  'leaving_tolerance',
];

/** Reasons whose sentence holds a number against a limit; the others rest on a test or on what is missing. */
export const WORKED_REASONS: ReadonlySet<string> = new Set(WORKED);
