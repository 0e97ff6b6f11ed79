/** The gas supply against the rating plate, by what was read. */
export type StaticVerdict = 'within' | 'over_maximum' | 'unknown';
export type RunningVerdict = 'within' | 'under_minimum' | 'unknown';

/** Share of the plate minimum within which a low supply can still move O2: the regulator starts to lose its grip. */
export const REGULATOR_MARGIN = 0.1;

/** Only a supply above the plate's maximum means shut and correct first. Pressures in Pa. */
export function staticVerdict(staticPa: number, maximumPa: number): StaticVerdict {
  if (Number.isNaN(staticPa) || Number.isNaN(maximumPa)) return 'unknown';
  return exceeds(staticPa, maximumPa) ? 'over_maximum' : 'within';
}

/** A running supply under the plate's minimum means do not tune, find out why. Pressures in Pa. */
export function runningVerdict(runningPa: number, minimumPa: number): RunningVerdict {
  if (Number.isNaN(runningPa) || Number.isNaN(minimumPa)) return 'unknown';
  return exceeds(minimumPa, runningPa) ? 'under_minimum' : 'within';
}

/** Whether the running supply is so low that it can move O2; unknown (no plate, no reading) is no. */
export function supplyMovesOxygen(runningPa: number, minimumPa: number): boolean {
  return runningPa <= minimumPa * (1 + REGULATOR_MARGIN);
}

/** More than the last digit of a conversion between units: 14 in. w.c. against 14 in. w.c. is no excess. */
export function exceeds(valuePa: number, limitPa: number): boolean {
  return valuePa > limitPa * (1 + 1e-6);
}
