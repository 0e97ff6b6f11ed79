import {
  DEFAULT_SETTINGS,
  PRESSURE_UNITS,
  type PressureUnit,
  REFERENCE_AIR_RANGE_C,
  type Settings,
} from '../../shared/settings.ts';
import type { NotebookDocument } from './document.ts';

/** The settings as cells know them; whatever is missing or cannot be one takes its usual value. */
export function documentSettings({ settings }: NotebookDocument): Settings {
  const { reference_air_C, currency, pressure_unit } = settings;
  return {
    referenceAirC: isReferenceAir(reference_air_C) ? reference_air_C : DEFAULT_SETTINGS.referenceAirC,
    currency: isCurrency(currency) ? currency : DEFAULT_SETTINGS.currency,
    pressureUnit: isPressureUnit(pressure_unit) ? pressure_unit : DEFAULT_SETTINGS.pressureUnit,
  };
}

export function isReferenceAir(value: unknown): value is number {
  const [least, most] = REFERENCE_AIR_RANGE_C;
  return typeof value === 'number' && value >= least && value <= most;
}

export const isPressureUnit = (value: unknown): value is PressureUnit =>
  typeof value === 'string' && Object.hasOwn(PRESSURE_UNITS, value);

export const isCurrency = (value: unknown): value is string => typeof value === 'string' && /^[A-Z]{3}$/.test(value);
