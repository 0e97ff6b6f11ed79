import type { FleetReadings } from './fleet-readings.ts';

/**
 * A burner left further from its aim than this many points of O2, and than this many setting tolerances, was left there: two
 * or three times what repeatability and an analyzer's bias explain together.
 */
const FAR_FROM_AIM_O2 = 1;
const FAR_FROM_AIM_TOLERANCES = 3;

/** The aim that an as-left reading speaks for; none (NaN) where it was left so far off that no noise explains it. */
export function aimBehind({ aim, tolerance }: FleetReadings, row: number, value: number): number {
  const farthest = Math.max(FAR_FROM_AIM_O2, FAR_FROM_AIM_TOLERANCES * tolerance[row]);
  return Math.abs(value - aim[row]) > farthest ? Number.NaN : aim[row];
}
