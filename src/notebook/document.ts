/**
 * A notebook as one JSON file. Everything that was decided is in it; everything that was calculated is not.
 * Fields that this version does not know are kept as they are.
 */
export const NOTEBOOK_FORMAT = 'between-visits-notebook';
export const NOTEBOOK_VERSION = 1;

/** What may name a cell; notebook.schema.json holds the same pattern. */
export const CELL_NAME = /^\p{L}[\p{L}\p{N}_ -]{0,59}$/u;

export interface NotebookDocument {
  readonly format: typeof NOTEBOOK_FORMAT;
  readonly version: typeof NOTEBOOK_VERSION;
  readonly title: string;
  /** The day the notebook looks from, YYYY-MM-DD. */
  readonly as_of: string;
  readonly settings: NotebookSettings;
  readonly data: readonly DataReference[];
  readonly cells: readonly CellEntry[];
  readonly [unknownField: string]: unknown;
}

export interface NotebookSettings {
  /** Seed of every random number; the same seed gives the same results. */
  readonly seed?: number;
  /** Air to which readings are brought, °C; 20 where it is left out. */
  readonly reference_air_C?: number;
  /** UCUM code of the unit in which pressures are printed; pascals where it is left out. */
  readonly pressure_unit?: string;
  /** ISO 4217 code of the money in register and fuel use. */
  readonly currency?: string;
  readonly [setting: string]: unknown;
}

/** A data file by reference; a small one may be carried along as text. */
export interface DataReference {
  /** The name by which cells ask for it. */
  readonly key: string;
  /** File name, resolved against the notebook's own folder. */
  readonly name: string;
  readonly size: number;
  /** SHA-256 of the bytes, lower-case hexadecimal; '' where it was never opened. */
  readonly hash: string;
  readonly text?: string;
  readonly [unknownField: string]: unknown;
}

export interface CellEntry {
  readonly name: string;
  readonly kind: string;
  readonly parameters: Readonly<Record<string, unknown>>;
  readonly [unknownField: string]: unknown;
}
