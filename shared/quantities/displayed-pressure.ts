import { PRESSURE_UNITS, type PressureUnit } from '../settings.ts';
import { convert } from './convert.ts';

/** How pressures, kept in pascals, are shown to people. */
export interface DisplayedPressure {
  /** The name that people know, such as in. w.c. */
  readonly unit: string;
  /** Pascals in one of the unit. */
  readonly pascals: number;
  /** Digits to write beyond those of the same value in pascals. */
  readonly moreDigits: number;
}

/** The one place that decides how a settled pressure unit is shown. */
export function displayedPressure(unit: PressureUnit): DisplayedPressure {
  const pascals = convert(1, unit, 'Pa');
  return { unit: PRESSURE_UNITS[unit], pascals, moreDigits: digitsFor(pascals) };
}

/** Digits in which a pascal more or less shows, by how many pascals the unit has. */
const digitsFor = (pascals: number): number => (pascals > 500 ? 3 : pascals > 10 ? 2 : 0);
