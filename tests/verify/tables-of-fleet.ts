import type { DriftTables } from '../../shared/foresight/drift-readings.ts';
import { READING_STATE } from '../../shared/foresight/fleet-readings.ts';
import { tableOfRecords } from '../../shared/foresight/table-of-records.ts';
import { derivedSchema } from '../../shared/schemas/derived.ts';
import { readingsSchema } from '../../shared/schemas/readings.ts';
import { limitsSchema } from '../../shared/schemas/register.ts';
import type { Table } from '../../shared/table/table.ts';
import type { SimulatedFleet } from './simulate-fleet.ts';

/** Tables of a simulated fleet, as the readings and derive cells would give them. */
export function tablesOfFleet({ readings, target }: SimulatedFleet): DriftTables & { limits: Table } {
  const rows = Array.from({ length: readings.rows }, (_, row) => ({
    unit: `U-${String(readings.unit[row]).padStart(5, '0')}`,
    taken_at: Math.floor(readings.day[row]),
    fire: readings.lane[row] % 2 === 0 ? 'high' : 'low',
    state: readings.state[row] === READING_STATE.found ? 'as_found' : 'as_left',
    fuel: 'natural_gas',
    adjusted: readings.adjusted[row] === 1 ? 'yes' : 'no',
    analyzer: `A-${readings.analyzer[row]}`,
    o2_pct: readings.first[row],
    o2_from: 'measured',
    co2_from: 'calculated',
    o2_reference_pct: readings.first[row],
    o2_pct_sd: 0.2,
    o2_reference_pct_sd: 0.2,
  }));
  const limits = [...new Set(rows.map(({ unit }) => unit))].flatMap((unit) =>
    ['high', 'low'].map((fire) => ({
      unit,
      fuel: 'natural_gas',
      fire,
      quantity: 'o2_pct',
      target_pct: target,
      setting_lower_pct: target - 0.6,
      setting_upper_pct: target + 0.6,
    })),
  );
  return {
    readings: tableOfRecords(readingsSchema, rows),
    derived: tableOfRecords(derivedSchema, rows),
    limits: tableOfRecords(limitsSchema, limits),
    units: undefined,
    events: undefined,
  };
}
