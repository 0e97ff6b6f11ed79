import { medianOf } from '../statistics/median-of.ts';
import { assumedAirVariance } from './assumed-air.ts';
import type { DriftReadings, DriftTables } from './drift-readings.ts';
import type { FleetFit } from './fit-model.ts';
import type { FittedLane } from './fitted-drift.ts';
import { columnStarts } from './fleet-program.ts';
import { READING_STATE } from './fleet-readings.ts';
import { hardwareOf } from './lane-keys.ts';

/** What a judgement needs to know of each lane beside its level and rate. */
export function describeLanes(
  read: DriftReadings,
  { effects, written }: Pick<FleetFit, 'effects' | 'written'>,
  tables: DriftTables,
): FittedLane[] {
  const { offsets } = columnStarts(written.program.shared);
  const hardware = hardwareOf(tables.units);
  const left = lastLeft(read, written.series.from);
  const measured = lanesWithSecond(read);
  const airVariance = assumedAirVariance(read, tables);
  return read.lanes.map((name, lane) => {
    const fuel = read.fleet.lanes.fuel[lane];
    const offsetO2 = measured[lane] ? effects.values[offsets + fuel] : 0;
    const co2maxPct = read.co2max[fuel];
    return {
      ...name,
      ...hardware(name.unit, name.fuel),
      co2maxPct,
      offsetO2,
      leftO2: medianOf(left[lane]),
      airVariance: airVariance[lane],
    };
  });
}

/** Per lane: whether its CO2 is measured. */
function lanesWithSecond({ fleet }: DriftReadings): boolean[] {
  const measured = new Array<boolean>(fleet.lanes.count).fill(false);
  for (let row = 0; row < fleet.rows; row++) if (Number.isFinite(fleet.second[row])) measured[fleet.lane[row]] = true;
  return measured;
}

/** Per lane: the last three as-left readings of the series in force, in O2 points. */
function lastLeft({ fleet }: DriftReadings, from: Float64Array): number[][] {
  const left: number[][] = Array.from({ length: fleet.lanes.count }, () => []);
  for (let row = 0; row < fleet.rows; row++) {
    const lane = fleet.lane[row];
    const value = Number.isFinite(fleet.first[row]) ? fleet.first[row] : fleet.second[row];
    if (fleet.state[row] !== READING_STATE.left || !(fleet.day[row] >= from[lane]) || !Number.isFinite(value)) continue;
    left[lane].push(value);
    if (left[lane].length > 3) left[lane].shift();
  }
  return left;
}
