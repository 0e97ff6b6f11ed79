import { savingsSchema } from '../../shared/schemas/savings.ts';
import { numberColumn, textColumn } from '../../shared/table/columns.ts';
import { tableOf } from '../../shared/table/schema.ts';
import type { Column, Table } from '../../shared/table/table.ts';
import type { FuelAYear } from './fuel-a-year.ts';
import type { FirePair } from './last-visits.ts';
import type { Saving } from './saving-of-visit.ts';

export interface SavingRow {
  readonly unit: string;
  readonly fuel: string;
  readonly foundOn: number;
  readonly leftOn: number;
  /** Undefined where the fuel is not known. */
  readonly saving: Saving | undefined;
  readonly fuelUse: FuelAYear;
  /** kg CO2e per kWh gross. */
  readonly emissionFactor: number;
  /** Share of the first year that counts against the counterfactual. */
  readonly shareOfYear: number;
  readonly counterfactual: string;
  readonly persistenceYears: number;
  readonly shareUnknown: boolean;
  readonly flueMoved: boolean;
  /** The visit says of every fire that it was not adjusted: what differs is not the visit's doing. */
  readonly leftAlone: boolean;
  readonly analyzer: string;
  /** Rows of the readings that were compared. */
  readonly pairs: readonly FirePair[];
}

type SavingNumber = Exclude<keyof Saving, 'parts'>;

/** One row a unit and fuel, in the order given. */
export function savingsTable(rows: readonly SavingRow[]): Table {
  const of = (unit: string, value: (row: SavingRow) => number): Column =>
    numberColumn(unit, Float64Array.from(rows, value));
  const text = (value: (row: SavingRow) => string): Column => textColumn(rows.map(value));
  const day = (value: (row: SavingRow) => number): Column => ({ kind: 'date', values: Float64Array.from(rows, value) });
  const saving = (name: SavingNumber) => (row: SavingRow) => row.saving?.[name] ?? Number.NaN;
  const energy = (name: SavingNumber) => (row: SavingRow) =>
    ((saving(name)(row) * row.shareOfYear) / 100) * row.fuelUse.energyKWh;
  const cost = (name: SavingNumber) => (row: SavingRow) => energy(name)(row) * row.fuelUse.pricePerKWh;
  return tableOf(
    savingsSchema,
    rows.length,
    new Map<string, Column>([
      ['unit', text((row) => row.unit)],
      ['fuel', text((row) => row.fuel)],
      ['found_on', day((row) => row.foundOn)],
      ['left_on', day((row) => row.leftOn)],
      ['efficiency_found_pct', of('%', saving('foundPct'))],
      ['efficiency_left_pct', of('%', saving('leftPct'))],
      ['fuel_saved_pct', of('%', saving('savedPct'))],
      ['fuel_saved_pct_lower', of('%', saving('lowerPct'))],
      ['fuel_saved_pct_upper', of('%', saving('upperPct'))],
      ['cost_saved', of('1', cost('savedPct'))],
      ['cost_saved_lower', of('1', cost('lowerPct'))],
      ['cost_saved_upper', of('1', cost('upperPct'))],
      ['co2e_saved_kg', of('kg', (row) => energy('savedPct')(row) * row.emissionFactor)],
      ['counterfactual', text((row) => row.counterfactual)],
      ['persistence_years', of('a', (row) => row.persistenceYears)],
      ['fuel_use_source', text((row) => row.fuelUse.source)],
      ['distinguishable', text(distinguishable)],
      ['fuel_saved_pct_same_flue', of('%', saving('sameFluePct'))],
    ]),
  );
}

/** Whether the 90 % interval leaves out nothing at all, and something was adjusted. */
function distinguishable({ saving, leftAlone }: SavingRow): 'yes' | 'no' | 'unknown' {
  if (leftAlone) return 'no';
  if (!saving || !Number.isFinite(saving.lowerPct + saving.upperPct)) return 'unknown';
  return saving.lowerPct > 0 || saving.upperPct < 0 ? 'yes' : 'no';
}
