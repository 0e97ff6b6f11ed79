import { calendar } from './calendar.ts';
import { csvLine } from './csv-line.ts';
import type { Reading } from './reading.ts';
import { fahrenheit, written } from './written.ts';

const HEAD =
  'unit,taken_at,fire,state,adjusted,visit,visit_reason,technician,fuel,firing_rate_pct,o2_pct,co2_pct,co2_from,co_ppm,flue_F,air_F,water_return_F,supply_static_inwc,supply_running_inwc,efficiency_printed_pct,analyzer,calibrated_on,returned_to_service,barometer_kPa,note';

/** Calibrated every spring, as far as the papers say. */
const calibratedOn = ({ visit: { day, analyzer } }: Reading): string => {
  if (analyzer === '' || analyzer === 'An-342') return '';
  const year = calendar.year(day);
  const passed = day >= calendar.day(`${year}-03-06`);
  return `${passed ? year : year - 1}-03-05`;
};

export function canonicalRow(reading: Reading): readonly string[] {
  const { visit } = reading;
  return [
    reading.unit,
    `${calendar.iso(visit.day)}T${calendar.clock(reading.minute)}`,
    reading.fire === 'single' ? '' : reading.fire,
    reading.state,
    reading.adjusted,
    visit.id,
    visit.reason,
    visit.technician,
    // Only where a unit burns two does anyone write which.
    reading.unit === 'FER-1' ? reading.fuel : '',
    String(reading.ratePct),
    written(reading.o2, 1),
    written(reading.co2, 1),
    reading.co2From,
    reading.co,
    fahrenheit(reading.flueC),
    fahrenheit(reading.airC),
    fahrenheit(reading.returnC),
    written(reading.staticInwc, 2),
    written(reading.runningInwc, 2),
    written(reading.efficiencyGross, 1),
    visit.analyzer,
    calibratedOn(reading),
    reading.returned,
    written(reading.barometerKPa, 1),
    reading.note,
  ].map((field) => (field === 'NaN' ? '' : field));
}

/** Crew one's and the house crew's export: canonical columns, commas, ISO dates, °F and inches of water column, ordered by time as it was typed. */
export function canonicalExport(rows: readonly (readonly string[])[]): string {
  return [HEAD, ...rows.map((row) => csvLine(row, ','))].join('\n').concat('\n');
}
