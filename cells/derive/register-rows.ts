import { burnerBehavior, type DensityExponents } from '../../shared/combustion/density-exponents.ts';
import { standardPressurePa } from '../../shared/quantities/standard-pressure.ts';
import { numbersOf, textAt, textsOf } from '../../shared/table/columns.ts';
import { rowsByKey } from '../../shared/table/rows-by-key.ts';
import type { Table } from '../../shared/table/table.ts';

/** The register as the derivations need it: a number for each of its rows, and the row that counts for a reading. */
export interface RegisterRows {
  readonly fuels: readonly string[];
  readonly exponents: readonly DensityExponents[];
  readonly behaviors: readonly string[];
  /** Of a unit that is not registered. */
  readonly unregistered: DensityExponents;
  /** Standard pressure at the unit's altitude, NaN where none is registered. */
  readonly sitePressurePa: readonly number[];
  /** Rows of a unit, in the register's order. */
  readonly of: (unit: string) => readonly number[];
  readonly validFrom: Float64Array;
}

export function registerRows(
  units: Table | undefined,
  exponents: Readonly<Record<string, DensityExponents>>,
): RegisterRows {
  const table = units ?? { rows: 0, columns: new Map() };
  const [fuel, burner, control, trim] = ['fuel', 'burner', 'fuel_air_control', 'trim'].map((name) =>
    textsOf(table, name),
  );
  const altitude = numbersOf(table, 'altitude_m');
  const rows = Array.from({ length: table.rows }, (_, row) => row);
  const behaviors = rows.map((row) => burnerBehavior(textAt(burner, row), textAt(control, row), textAt(trim, row)));
  const byUnit = units ? rowsByKey(units, ['unit']) : new Map<string, readonly number[]>();
  return {
    fuels: rows.map((row) => textAt(fuel, row)),
    behaviors,
    unregistered: exponents.unknown,
    exponents: behaviors.map((behavior) => exponents[behavior]),
    sitePressurePa: rows.map((row) => standardPressurePa(altitude[row])),
    of: (name) => byUnit.get(name) ?? [],
    validFrom: numbersOf(table, 'valid_from'),
  };
}
