import { columnsBeforeZones, type FleetProgram } from './fleet-program.ts';
import type { FleetReadings } from './fleet-readings.ts';

/** Units read in a zone's month from which a change of the gas can be told from a change of one burner. */
export const LEAST_ZONE_UNITS = 4;
/** Such months from which it can be told how much they differ. */
export const LEAST_ZONE_MONTHS = 6;
/** The shared effects are solved densely: in a fleet of many zones, the months that the most units share. */
const MOST_COLUMNS = 360;

/** Which zones' months get an effect of their own. */
export interface SharedMonths {
  /** Per code: its column, -1 for none. */
  readonly column: Int32Array;
  /** Per column: its code, and how many units were read then. */
  readonly codes: readonly number[];
  readonly units: readonly number[];
}

/** Zones' months that at least four units share; none where there are too few of them to tell how they differ. */
export function sharedMonths(readings: FleetReadings): SharedMonths {
  const units = unitsOfMonths(readings);
  const enough = [...units.keys()].filter((code) => units[code] >= LEAST_ZONE_UNITS);
  const most = enough.sort((a, b) => units[b] - units[a] || a - b).slice(0, MOST_COLUMNS);
  const codes = most.length < LEAST_ZONE_MONTHS ? [] : most.sort((a, b) => a - b);
  const column = new Int32Array(units.length).fill(-1);
  codes.forEach((code, place) => {
    column[code] = place;
  });
  return { column, codes, units: codes.map((code) => units[code]) };
}

/** Per code: in how many units. Rows stand by unit. */
function unitsOfMonths({ rows, unit, zoneMonth, zoneMonths }: FleetReadings): Int32Array {
  const units = new Int32Array(zoneMonths);
  const last = new Int32Array(zoneMonths).fill(-1);
  for (let row = 0; row < rows; row++) {
    const code = zoneMonth[row];
    if (code < 0 || last[code] === unit[row]) continue;
    last[code] = unit[row];
    units[code]++;
  }
  return units;
}

/** Code of a visit's zone and month: -1 where any of its readings has none, since the visit's effect is shared by all. */
export function zoneMonthOfVisit({ zoneMonth }: FleetReadings, start: number, end: number): number {
  for (let row = start; row < end; row++) if (zoneMonth[row] < 0) return -1;
  return zoneMonth[start];
}

/** The same steps for a filter that knows of no zones: their columns stand last in every list and are cut off. */
export function withoutZones(program: FleetProgram): FleetProgram {
  const { units, unitColumns, columns, shared } = program;
  if (shared.zoneMonths === 0) return program;
  const end = columnsBeforeZones(shared);
  const kept: number[] = [];
  const starts = new Int32Array(units + 1);
  for (let unit = 0; unit < units; unit++) {
    for (let place = unitColumns[unit]; place < unitColumns[unit + 1]; place++)
      if (columns[place] < end) kept.push(columns[place]);
    starts[unit + 1] = kept.length;
  }
  return { ...program, unitColumns: starts, columns: Int32Array.from(kept), shared: { ...shared, zoneMonths: 0 } };
}
