/** What a notebook settles once for all its cells. */
export interface Settings {
  /** Combustion air to which readings are brought for comparison, °C; its pressure is the site's own standard one. */
  readonly referenceAirC: number;
  /** ISO 4217 code of the money in register and fuel use; '' where nobody has said. */
  readonly currency: string;
  /** In which the report prints pressures; files keep pascals. */
  readonly pressureUnit: PressureUnit;
}

/** UCUM codes of the units in which technicians read a manometer, with the name that people know. */
export const PRESSURE_UNITS = { Pa: 'Pa', kPa: 'kPa', mbar: 'mbar', "[in_i'H2O]": 'in. w.c.' } as const;
export type PressureUnit = keyof typeof PRESSURE_UNITS;

export type SettingName = keyof Settings;

export const DEFAULT_SETTINGS: Settings = { referenceAirC: 20, currency: '', pressureUnit: 'Pa' };

/** Air that a boiler room or the weather can have, °C. */
export const REFERENCE_AIR_RANGE_C = [-20, 50] as const;

/** What a host says of its notebook's settings; the usual ones where it says nothing. */
export const settingsOf = ({ settings }: { readonly settings?: Settings }): Settings => settings ?? DEFAULT_SETTINGS;
