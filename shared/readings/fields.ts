import type { WordColumn } from './value-words.ts';

/**
 * What a column of a file can be: a field of the table that the file becomes. Fields of a dimension are read in the
 * unit that the file gives and kept in the canonical one.
 */
export interface Field {
  /** Base name as the project's own files write it: 'o2_pct', 'flue' (its column is flue_C). */
  readonly name: string;
  /** Column of the resulting table. */
  readonly column: string;
  readonly kind: 'number' | 'date' | 'time' | 'text' | 'word';
  /** For words: which list they are read by. */
  readonly words?: WordColumn;
  /** UCUM code of the unit that is kept; '' for what has none. */
  readonly unit: string;
  /** For fields of a dimension: suffix in the project's own files -> UCUM code. */
  readonly suffixes?: Readonly<Record<string, string>>;
  /** A measured value: a row needs one. */
  readonly measured: boolean;
}

const TEMPERATURES = { C: 'Cel', F: '[degF]' };
const PRESSURES = { inwc: "[in_i'H2O]", mbar: 'mbar', Pa: 'Pa', kPa: 'kPa', psi: '[psi]' };
const POWERS = { kW: 'kW', btuh: '[Btu_IT]/h' };

export const textField = (name: string): Field => ({ name, column: name, kind: 'text', unit: '', measured: false });
export const dateField = (name: string): Field => ({ name, column: name, kind: 'date', unit: '', measured: false });
export const wordField = (name: string, words: WordColumn): Field => ({
  name,
  column: name,
  kind: 'word',
  words,
  unit: '',
  measured: false,
});
export const numberField = (name: string, unit: string, measured = false): Field => ({
  name,
  column: name,
  kind: 'number',
  unit,
  measured,
});
export const temperatureField = (name: string): Field => ({
  ...numberField(name, 'Cel', true),
  column: `${name}_C`,
  suffixes: TEMPERATURES,
});
export const pressureField = (name: string, measured = true): Field => ({
  ...numberField(name, 'Pa', measured),
  column: `${name}_Pa`,
  suffixes: PRESSURES,
});
export const powerField = (name: string, measured = false): Field => ({
  ...numberField(name, 'kW', measured),
  column: `${name}_kW`,
  suffixes: POWERS,
});

/** The readings table, in the order of its schema. */
export const READING_FIELDS: readonly Field[] = [
  textField('unit'),
  dateField('taken_at'),
  { ...dateField('time_of_day'), kind: 'time' },
  wordField('statistic', 'statistic'),
  wordField('fire', 'fire'),
  wordField('state', 'state'),
  wordField('adjusted', 'yes_no'),
  textField('visit'),
  wordField('visit_reason', 'visit_reason'),
  textField('technician'),
  wordField('fuel', 'fuel'),
  numberField('firing_rate_pct', '%'),
  numberField('o2_pct', '%', true),
  numberField('co2_pct', '%', true),
  wordField('co2_from', 'co2_from'),
  numberField('o2_wet_pct', '%', true),
  numberField('co_ppm', '[ppm]', true),
  numberField('co_air_free_ppm', '[ppm]', true),
  numberField('nox_ppm', '[ppm]', true),
  temperatureField('flue'),
  temperatureField('air'),
  temperatureField('water_return'),
  temperatureField('water_supply'),
  pressureField('supply_static'),
  pressureField('supply_running'),
  pressureField('manifold'),
  pressureField('draft'),
  numberField('efficiency_printed_pct', '%'),
  numberField('excess_air_printed_pct', '%'),
  numberField('flame_signal_uA', 'uA', true),
  powerField('heat_input_clocked', true),
  textField('analyzer'),
  dateField('calibrated_on'),
  wordField('returned_to_service', 'yes_no'),
  { ...numberField('barometer', 'kPa'), column: 'barometer_kPa', suffixes: { ...PRESSURES, hPa: 'hPa' } },
  numberField('co_ambient_ppm', '[ppm]', true),
  textField('note'),
];
