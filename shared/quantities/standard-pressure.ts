import { power } from './elementary.ts';

/** Pressure of the standard atmosphere at an altitude, Pa (ISO 2533, troposphere, -500 m to 11 km). */
export function standardPressurePa(altitudeM: number): number {
  return 101_325 * power(1 - 2.25577e-5 * altitudeM, 5.25588);
}
