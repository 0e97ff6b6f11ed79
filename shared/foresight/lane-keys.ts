import { numbersOf, textAt, textsOf } from '../table/columns.ts';
import type { Table } from '../table/table.ts';

/** What a class of lanes has in common, from the register; '' where it does not say. */
export interface Hardware {
  readonly burner: string;
  readonly control: string;
  readonly airSource: string;
  readonly trim: string;
  /** Gas zone: units of one zone get the same gas. */
  readonly zone: string;
}

const UNKNOWN: Hardware = { burner: '', control: '', airSource: '', trim: '', zone: '' };

/** The register's row in force for a unit and fuel: the last valid one, of that fuel or else of no named fuel. */
export function hardwareOf(units: Table | undefined): (unit: string, fuel: string) => Hardware {
  const known = new Map<string, Hardware>();
  if (units) {
    const column = (name: string): ((row: number) => string) => {
      const texts = textsOf(units, name);
      return (row) => textAt(texts, row);
    };
    const [unit, fuel, burner, control, airSource, trim, zone] = [
      'unit',
      'fuel',
      'burner',
      'fuel_air_control',
      'air_source',
      'trim',
      'gas_zone',
    ].map(column);
    for (const row of rowsByValidity(units)) {
      const hardware = {
        burner: burner(row),
        control: control(row),
        airSource: airSource(row),
        trim: trim(row),
        zone: zone(row),
      };
      known.set(`${unit(row)}\u0000${fuel(row)}`, hardware);
      known.set(unit(row), hardware);
    }
  }
  return (unit, fuel) => known.get(`${unit}\u0000${fuel}`) ?? known.get(`${unit}\u0000`) ?? known.get(unit) ?? UNKNOWN;
}

/** Row numbers in order of valid_from, undated rows first. */
export function rowsByValidity(table: Table, asOf = Number.POSITIVE_INFINITY): number[] {
  const from = numbersOf(table, 'valid_from');
  const start = (row: number): number => (Number.isFinite(from[row]) ? from[row] : Number.NEGATIVE_INFINITY);
  return Array.from({ length: table.rows }, (_, row) => row)
    .filter((row) => start(row) <= asOf)
    .sort((a, b) => start(a) - start(b) || a - b);
}
