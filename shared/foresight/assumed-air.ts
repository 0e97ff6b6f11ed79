import { numbersOf, textsOf } from '../table/columns.ts';
import type { DriftReadings, DriftTables } from './drift-readings.ts';

/**
 * Per lane: the variance of its level, in points of O2 squared, that comes from an air temperature which is assumed and not
 * read. The fit takes what it adds as of each reading by itself, as weather is; but that a place is warmer or colder than
 * assumed is common to all its readings and does not grow less with their number. A lane whose air was read now and then
 * has it in the share of the readings without. (The same uncertainty counts for the one and for the other: common practice,
 * no source.)
 */
export function assumedAirVariance(read: DriftReadings, tables: DriftTables): Float64Array {
  const { fleet, sourceRow } = read;
  const air = numbersOf(tables.readings, 'air_C');
  const flags = textsOf(tables.derived, 'flags');
  // Burners that do not follow the density of the air: their season is spread wide already, reading by reading.
  const unmoved = flags.levels.map((text) => text.split(' ').includes('season_not_removed'));
  const { count } = fleet.lanes;
  const [all, assumed, added] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < fleet.rows; i++) {
    if (Number.isNaN(fleet.first[i]) && Number.isNaN(fleet.second[i])) continue;
    const [lane, row] = [fleet.lane[i], sourceRow[i]];
    all[lane]++;
    if (!Number.isNaN(air[row]) || !(fleet.extra[i] > 0) || unmoved[flags.codes[row]]) continue;
    assumed[lane]++;
    added[lane] += fleet.extra[i];
  }
  return added.map((sum, lane) => (sum > 0 ? (sum / assumed[lane]) * (assumed[lane] / all[lane]) ** 2 : 0));
}
