import { REGULATORY_OXYGEN_PCT } from '../../shared/combustion/oxygen-in-air.ts';
import { numberColumn, numbersOf } from '../../shared/table/columns.ts';
import type { Table } from '../../shared/table/table.ts';

/**
 * CO air-free and at 3 % O2 in ppm, from the readings alone, for when nothing has been derived: the emission relations of
 * the same names, without their uncertainty. Unknown where neither O2 nor a printed air-free CO is known; such a reading
 * is still judged by its CO as measured, and closes nothing.
 */
export function coOfReadings(readings: Table): Table {
  const [co, o2, printed] = ['co_ppm', 'o2_pct', 'co_air_free_ppm'].map((name) => numbersOf(readings, name));
  const airFree = co.map((ppm, row) => {
    const own =
      o2[row] < REGULATORY_OXYGEN_PCT ? (ppm * REGULATORY_OXYGEN_PCT) / (REGULATORY_OXYGEN_PCT - o2[row]) : NaN;
    return Number.isNaN(own) ? printed[row] : own;
  });
  const at3Pct = airFree.map((ppm) => (ppm * (REGULATORY_OXYGEN_PCT - 3)) / REGULATORY_OXYGEN_PCT);
  return {
    rows: readings.rows,
    columns: new Map([
      ['co_air_free_ppm', numberColumn('ppm', airFree)],
      ['co_at_3pct_o2_ppm', numberColumn('ppm', at3Pct)],
    ]),
  };
}
