import { dayOf } from '../quantities/dates.ts';
import { gasMonthsSchema } from '../schemas/drift.ts';
import type { Table } from '../table/table.ts';
import type { DriftReadings } from './drift-readings.ts';
import type { FleetFit } from './fit-model.ts';
import { columnsOf } from './fleet-program.ts';
import { tableOfRecords } from './table-of-records.ts';

/** One row a zone and month that at least four units share, by zone and time; none where months were not found to differ. */
export function tableOfGasMonths({ zoneMonths }: DriftReadings, { written, effects }: FleetFit): Table {
  const { shared } = written.program;
  const total = columnsOf(shared);
  const first = total - shared.zoneMonths;
  const rows =
    shared.zoneMonths === 0 ? [] : written.months.codes.map((code, place) => ({ code, at: first + place, place }));
  const records = rows.map(({ code, at, place }) => {
    const { zone, month } = zoneMonths[code];
    return {
      gas_zone: zone,
      month: dayOf(1970 + Math.floor(month / 12), (month % 12) + 1, 1),
      units: written.months.units[place],
      o2_pct: effects.values[at],
      o2_pct_sd: Math.sqrt(effects.covariance[at * total + at]),
    };
  });
  records.sort((a, b) => (a.gas_zone < b.gas_zone ? -1 : a.gas_zone > b.gas_zone ? 1 : a.month - b.month));
  return tableOfRecords(gasMonthsSchema, records);
}
